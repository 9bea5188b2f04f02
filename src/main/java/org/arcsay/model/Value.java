package org.arcsay.model;

import java.math.BigDecimal;
import java.util.Locale;
import java.util.Optional;

/** What was found at a measure. Numbers are never negative: the direction of an extension is a kind, not a sign. */
public sealed interface Value {

    /** The value in plain words with its unit, such as "lacks 10 degrees" or "38 mm". */
    String words();

    /** The length of a gap or a span. */
    default Optional<Distance> length() {
        return Optional.empty();
    }

    /**
     * Degrees from neutral in the direction that the motion names.
     *
     * @param degrees 0 to 180
     */
    record Angle(BigDecimal degrees) implements Value {
        public Angle {
            degrees = Decimals.within(degrees, 0, 180, "an angle");
        }

        public static Angle of(String degrees) {
            return new Angle(new BigDecimal(degrees));
        }

        public static Angle of(long degrees) {
            return new Angle(BigDecimal.valueOf(degrees));
        }

        @Override
        public String words() {
            return degrees.toPlainString() + " degrees";
        }
    }

    /** On which side of neutral a joint comes to rest when it is straightened. */
    enum ExtensionKind {
        /** The joint does not reach neutral; the value says how many degrees are lacking. */
        DEFICIT,
        /** The joint reaches exactly neutral; the value is 0. */
        NEUTRAL,
        /** The joint passes neutral; the value says by how many degrees. */
        HYPEREXTENSION
    }

    /**
     * How far a joint straightens.
     *
     * @param kind deficit, neutral or hyperextension
     * @param degrees 0 to 180, and 0 exactly when the kind is neutral
     */
    record Extension(ExtensionKind kind, BigDecimal degrees) implements Value {
        public Extension {
            degrees = Decimals.within(degrees, 0, 180, "an extension");
            if (degrees.signum() == 0) {
                kind = ExtensionKind.NEUTRAL;
            } else if (kind == ExtensionKind.NEUTRAL) {
                throw new IllegalArgumentException("a neutral extension has 0 degrees, not " + degrees.toPlainString());
            }
        }

        public static Extension deficit(String degrees) {
            return new Extension(ExtensionKind.DEFICIT, new BigDecimal(degrees));
        }

        public static Extension hyperextension(String degrees) {
            return new Extension(ExtensionKind.HYPEREXTENSION, new BigDecimal(degrees));
        }

        public static Extension neutral() {
            return new Extension(ExtensionKind.NEUTRAL, BigDecimal.ZERO);
        }

        /** Degrees beyond neutral: positive for hyperextension, negative for a deficit. For arithmetic only, never shown. */
        public BigDecimal beyondNeutral() {
            return kind == ExtensionKind.DEFICIT ? degrees.negate() : degrees;
        }

        @Override
        public String words() {
            return switch (kind) {
                case DEFICIT -> "lacks " + degrees.toPlainString() + " degrees";
                case NEUTRAL -> "reaches neutral, 0 degrees";
                case HYPEREXTENSION -> "hyperextends " + degrees.toPlainString() + " degrees";
            };
        }
    }

    /** The distance that remains between the thumb tip and its target; 0 means touching. */
    record Gap(Distance distance) implements Value {
        @Override
        public Optional<Distance> length() {
            return Optional.of(distance);
        }

        @Override
        public String words() {
            return distance.amount().signum() == 0
                    ? "touches, 0 " + distance.unit().symbol()
                    : distance.toString();
        }
    }

    /** A distance that is better when bigger. */
    record Span(Distance distance) implements Value {
        @Override
        public Optional<Distance> length() {
            return Optional.of(distance);
        }

        @Override
        public String words() {
            return distance.toString();
        }
    }

    /**
     * The opposition score.
     *
     * @param points 0 to 10
     */
    record Score(int points) implements Value {
        public Score {
            if (points < 0 || points > 10) {
                throw new IllegalArgumentException("an opposition score is 0 to 10, not " + points);
            }
        }

        @Override
        public String words() {
            return points + " of 10";
        }
    }

    /** Why a measure has no value. */
    enum NotTestedReason {
        PAIN,
        WOUND,
        PIN,
        SPLINT,
        PROTOCOL,
        DECLINED,
        UNABLE,
        /** Said without a reason; the reviewer is asked to give one. */
        UNSTATED;

        public String words() {
            return name().toLowerCase(Locale.ROOT);
        }
    }

    /** Deliberately not measured. */
    record NotTested(NotTestedReason reason) implements Value {
        @Override
        public String words() {
            return reason == NotTestedReason.UNSTATED ? "not tested" : "not tested: " + reason.words();
        }
    }

    /** A description that carries no number. */
    enum Phrase {
        FULL("full"),
        WITHIN_NORMAL_LIMITS("within normal limits");

        private final String words;

        Phrase(String words) {
            this.words = words;
        }

        public String words() {
            return words;
        }
    }

    /** Said in words only; kept as said, and no number is made up for it. */
    record Unquantified(Phrase phrase) implements Value {
        @Override
        public String words() {
            return phrase.words() + ", no number given";
        }
    }
}
