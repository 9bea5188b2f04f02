package org.arcsay.session;

import org.arcsay.model.JournalEvent;

/** Where the events of one visit become permanent. An event that {@link #append} returned from survives a crash. */
public interface Journal {
    /**
     * Stores one event durably.
     *
     * @throws JournalException when it could not be stored; then nothing of it was, and the message says why and what to do
     */
    void append(JournalEvent event) throws JournalException;
}
