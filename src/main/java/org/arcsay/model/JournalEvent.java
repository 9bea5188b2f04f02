package org.arcsay.model;

import java.time.OffsetDateTime;
import java.util.List;
import java.util.OptionalInt;

/**
 * One thing that happened in a visit. Events are only ever added; a visit's state is what replaying them gives.
 *
 * <p>{@code by} is the role or initials of the person who did it, or empty when nobody said.
 */
public sealed interface JournalEvent {
    OffsetDateTime at();

    /**
     * A reading was understood and stored.
     *
     * @param entry number of the new entry, one more than the highest so far
     * @param replaces number of the entry it corrects; that one becomes superseded
     * @param held whether it waits for an answer
     */
    record Taken(
            OffsetDateTime at,
            int entry,
            Reading reading,
            List<Remark> remarks,
            List<Finding> findings,
            Heard heard,
            boolean held,
            OptionalInt replaces,
            String by,
            String why)
            implements JournalEvent {
        public Taken {
            remarks = List.copyOf(remarks);
            findings = List.copyOf(findings);
        }
    }

    /** A remark was added to an entry. */
    record Remarked(OffsetDateTime at, int entry, Remark remark, String by) implements JournalEvent {}

    /** A held entry was accepted as said; it is now unconfirmed like any other. */
    record Released(OffsetDateTime at, int entry, String by, String why) implements JournalEvent {}

    /** An entry was taken back by voice or rejected in review. */
    record Rejected(OffsetDateTime at, int entry, String by, String why) implements JournalEvent {}

    /** An entry was reviewed and made final. */
    record Confirmed(OffsetDateTime at, int entry, String by) implements JournalEvent {}

    /** Listening for this visit ended. */
    record Ended(OffsetDateTime at, String by) implements JournalEvent {}
}
