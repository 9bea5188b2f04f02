package org.arcsay.session;

import java.util.Optional;
import org.arcsay.model.Finding;
import org.arcsay.model.Heard;
import org.arcsay.model.Measure;
import org.arcsay.parser.Command;
import org.arcsay.parser.SpokenKind;
import org.arcsay.parser.Who;

/** What the session waits to hear. A question is asked once; a reading of something else leaves it for the review. */
public sealed interface Question {
    /** The rule of a finding that doubts the hearing, not the value. */
    String HEARING = "hearing.doubtful";

    /** The rule of a finding that doubts hand, mode or placement, because words about them before it were not clear. */
    String CONTEXT = "hearing.context";

    /** One short sentence, as shown and spoken. */
    String sentence();

    /** Whether a stored entry is asked about; if not, nothing is stored before the answer. */
    default boolean isAboutEntry() {
        return false;
    }

    /**
     * Is that value right? Answered by yes, no, no with a number, or the whole reading.
     *
     * @param entry number of the stored entry
     * @param finding why it is asked
     */
    record IsItRight(int entry, Finding finding) implements Question {
        @Override
        public boolean isAboutEntry() {
            return true;
        }

        @Override
        public String sentence() {
            return finding.sentence();
        }
    }

    /**
     * The same was measured before in this visit: second trial, or does it replace the earlier one?
     *
     * @param entry number of the new entry, already stored
     * @param earlier number of the earlier entry
     */
    record Again(int entry, int earlier, Finding finding) implements Question {
        @Override
        public boolean isAboutEntry() {
            return true;
        }

        @Override
        public String sentence() {
            return finding.sentence() + " Second trial, or correct that?";
        }
    }

    /** Which hand? Nothing is stored before the answer. */
    record WhichHand(Command.Dictated pending, Heard heard) implements Question {
        @Override
        public String sentence() {
            return "Which hand?";
        }
    }

    /** Beyond neutral or short of it? Nothing is stored before the answer. */
    record WhichKind(Command.Dictated pending, Heard heard) implements Question {
        @Override
        public String sentence() {
            return "Hyperextension, or deficit?";
        }
    }

    /** The number that belongs to a measure named before it. */
    record WhichValue(Who who, Measure measure, Optional<SpokenKind> kind, boolean motionImplied) implements Question {
        @Override
        public String sentence() {
            return measure.words() + ": how much?";
        }
    }

    /**
     * A number for an entry that was described in words only.
     *
     * @param entry number of the stored entry
     */
    record WhichNumber(int entry) implements Question {
        @Override
        public boolean isAboutEntry() {
            return true;
        }

        @Override
        public String sentence() {
            return "How many degrees?";
        }
    }
}
