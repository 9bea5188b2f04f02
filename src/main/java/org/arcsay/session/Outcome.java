package org.arcsay.session;

import java.util.List;
import java.util.Optional;
import org.arcsay.model.Entry;
import org.arcsay.model.Mode;
import org.arcsay.model.Remark;
import org.arcsay.model.Side;
import org.arcsay.model.Slot;

/** What came of an utterance, for whoever shows or sounds it. An outcome that names entries means that they are stored. */
public sealed interface Outcome {

    /**
     * Understood and stored.
     *
     * @param entries the new entries
     * @param motionImplied whether flexion was understood from the joint alone, so that the echo must say it
     */
    record Saved(List<Entry> entries, boolean motionImplied) implements Outcome {
        public Saved {
            entries = List.copyOf(entries);
        }
    }

    /** An earlier entry was replaced. */
    record Corrected(Entry before, Entry now) implements Outcome {}

    /**
     * A question is open.
     *
     * @param stored entries that were stored before asking; empty when nothing is stored before the answer
     */
    record Asked(Question question, List<Entry> stored) implements Outcome {
        public Asked {
            stored = List.copyOf(stored);
        }
    }

    /** A question was answered, and the entry stays as it is. */
    record Kept(Entry entry) implements Outcome {}

    /**
     * Entries were taken back; they remain in the history.
     *
     * @param restored entries taken anew because what had replaced them was taken back
     */
    record Undone(List<Entry> entries, List<Entry> restored) implements Outcome {
        public Undone {
            entries = List.copyOf(entries);
            restored = List.copyOf(restored);
        }
    }

    record Remarked(Entry entry, Remark remark) implements Outcome {}

    /** Hand, mode or placement changed; all are given as they now stand. */
    record ContextSet(Context context) implements Outcome {}

    /** The entries of the visit so far, to be read back. */
    record ReadBack(List<Entry> entries) implements Outcome {
        public ReadBack {
            entries = List.copyOf(entries);
        }
    }

    /** The last answer is wanted again. */
    record SayAgain() implements Outcome {}

    /** What the series still lacks, in the order of the plan; empty when it is complete. */
    record Missing(List<Slot> slots) implements Outcome {
        public Missing {
            slots = List.copyOf(slots);
        }
    }

    /** What is expected next, unless the series is complete. */
    record Next(Optional<Slot> slot) implements Outcome {}

    /** Hand, mode, and what is expected next. */
    record Position(Optional<Side> side, Mode mode, Optional<Entry> last, Optional<Slot> next) implements Outcome {}

    record Paused() implements Outcome {}

    record Listening() implements Outcome {}

    record Ended() implements Outcome {}

    /** Deliberately left unanswered: talk while paused. */
    record Ignored() implements Outcome {}

    /**
     * Not understood or not possible; nothing was stored.
     *
     * @param sentence what happened and what to do
     */
    record Refused(Why why, String sentence) implements Outcome {}

    enum Why {
        NOT_UNDERSTOOD,
        NO_JOINT,
        NOTHING_TO_CHANGE,
        NO_QUESTION,
        IMPOSSIBLE,
        CONTRADICTORY,
        NOTHING_EXPECTED,
        /** The store failed; the sentence says why, and nothing was announced as saved. */
        NOT_STORED
    }
}
