package org.arcsay.review;

import java.io.IOException;
import java.util.List;

/** Where half-typed forms of a visit outlive a closed window. They are no readings and never count as such. */
public interface Drafts {
    /**
     * Everything kept for a visit.
     *
     * @throws IOException when it could not be read; the message says what to do
     */
    List<Draft> load(long visit) throws IOException;

    /**
     * Keeps exactly these drafts for a visit, none when the list is empty.
     *
     * @throws IOException when they could not be kept; those kept before are untouched
     */
    void keep(long visit, List<Draft> drafts) throws IOException;
}
