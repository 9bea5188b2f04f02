package org.arcsay.review;

import java.util.ArrayList;
import java.util.List;
import org.arcsay.model.JournalEvent;
import org.arcsay.session.Journal;
import org.arcsay.session.JournalException;

/** A journal in memory whose disk can be made to fail at the n-th event. Used by one thread. */
public final class ListJournal implements Journal {
    public static final String FAILURE = "The disk is full. Free some space, then save again.";
    private final List<JournalEvent> events = new ArrayList<>();
    private int failAt = -1;

    public List<JournalEvent> events() {
        return events;
    }

    /** Fails when this many more events have been stored; until {@link #repair}. */
    public void failAfter(int more) {
        failAt = events.size() + more;
    }

    public void repair() {
        failAt = -1;
    }

    @Override
    public void append(JournalEvent event) throws JournalException {
        if (failAt >= 0 && events.size() >= failAt) {
            throw new JournalException(FAILURE, null);
        }
        events.add(event);
    }
}
