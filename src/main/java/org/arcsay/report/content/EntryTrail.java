package org.arcsay.report.content;

import java.time.OffsetDateTime;
import java.util.List;
import java.util.Optional;
import org.arcsay.model.JournalEvent;

/**
 * The decisions that were made about one entry.
 *
 * @param held whether it was held back for an answer when it was taken
 * @param takenBy role or initials of the person who took it, or empty
 * @param takenWhy the reason given when it was taken, such as the reason for a correction, or empty
 * @param accepted the last time a held entry was accepted as said
 * @param confirmed the last time it was confirmed
 * @param rejected when it was taken back
 */
public record EntryTrail(
        boolean held,
        String takenBy,
        String takenWhy,
        Optional<Decision> accepted,
        Optional<Decision> confirmed,
        Optional<Decision> rejected) {
    private static final EntryTrail EMPTY =
            new EntryTrail(false, "", "", Optional.empty(), Optional.empty(), Optional.empty());

    /**
     * One decision.
     *
     * @param at when
     * @param by role or initials, or empty
     * @param why the reason, or empty
     */
    public record Decision(OffsetDateTime at, String by, String why) {}

    static EntryTrail of(List<JournalEvent> journal, int number) {
        EntryTrail trail = EMPTY;
        for (JournalEvent event : journal) {
            trail = trail.after(event, number);
        }
        return trail;
    }

    private EntryTrail after(JournalEvent event, int number) {
        if (event instanceof JournalEvent.Taken e && e.entry() == number) {
            return new EntryTrail(e.held(), e.by(), e.why(), accepted, confirmed, rejected);
        }
        if (event instanceof JournalEvent.Released e && e.entry() == number) {
            return new EntryTrail(held, takenBy, takenWhy, decision(e.at(), e.by(), e.why()), confirmed, rejected);
        }
        if (event instanceof JournalEvent.Confirmed e && e.entry() == number) {
            return new EntryTrail(held, takenBy, takenWhy, accepted, decision(e.at(), e.by(), ""), rejected);
        }
        if (event instanceof JournalEvent.Rejected e && e.entry() == number) {
            return new EntryTrail(held, takenBy, takenWhy, accepted, confirmed, decision(e.at(), e.by(), e.why()));
        }
        return this;
    }

    private static Optional<Decision> decision(OffsetDateTime at, String by, String why) {
        return Optional.of(new Decision(at, by, why));
    }
}
