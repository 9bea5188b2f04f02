package org.arcsay.review;

import java.nio.file.Path;
import java.util.List;

/** Makes the report of a visit as it is stored at that moment. Called by the thread of the screen. */
public interface VisitReport {
    /**
     * The report, to be looked at.
     *
     * @param pages the pages as PNG pictures
     * @param words the same report as plain text, for who cannot see the pictures
     * @param fileName what the file is called unless the user says otherwise
     */
    record Pages(List<byte[]> pages, String words, String fileName) {
        public Pages {
            pages = List.copyOf(pages);
        }
    }

    Pages show(long visit) throws HomeException;

    /** Writes the report as PDF; a file of that name is replaced. */
    void save(long visit, Path file) throws HomeException;
}
