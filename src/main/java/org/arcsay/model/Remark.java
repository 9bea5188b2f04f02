package org.arcsay.model;

import java.util.OptionalInt;

/** Something said about a reading that is not its value. */
public sealed interface Remark {

    String words();

    /** Where in the motion pain is felt. */
    enum PainPlace {
        NONE("no pain"),
        PRESENT("pain"),
        AT_END_RANGE("pain at end range"),
        THROUGH_RANGE("pain through range"),
        AT_REST("pain at rest");

        private final String words;

        PainPlace(String words) {
            this.words = words;
        }

        public String words() {
            return words;
        }
    }

    /**
     * Pain during the motion.
     *
     * @param place where in the motion
     * @param score 0 to 10 when one was said
     */
    record Pain(PainPlace place, OptionalInt score) implements Remark {
        public Pain {
            if (score.isPresent() && (score.getAsInt() < 0 || score.getAsInt() > 10)) {
                throw new IllegalArgumentException("a pain score is 0 to 10, not " + score.getAsInt());
            }
        }

        @Override
        public String words() {
            return score.isPresent() ? place.words() + " " + score.getAsInt() + " of 10" : place.words();
        }
    }

    /** How the motion felt to the examiner. */
    enum Feel {
        STIFF("stiff"),
        TIGHT("tight"),
        SWOLLEN("swollen"),
        GUARDED("guarded"),
        SOFT_END_FEEL("soft end feel"),
        FIRM_END_FEEL("firm end feel"),
        HARD_END_FEEL("hard end feel");

        private final String words;

        Feel(String words) {
            this.words = words;
        }

        public String words() {
            return words;
        }
    }

    record Quality(Feel feel) implements Remark {
        @Override
        public String words() {
            return feel.words();
        }
    }

    /**
     * Free text typed by the reviewer.
     *
     * @param text 1 to 500 characters
     */
    record Note(String text) implements Remark {
        public Note {
            if (text.isBlank() || text.length() > 500) {
                throw new IllegalArgumentException("a note has 1 to 500 characters");
            }
        }

        @Override
        public String words() {
            return text;
        }
    }
}
