package org.arcsay.report.content;

import java.math.BigDecimal;
import java.util.Arrays;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Collectors;
import org.arcsay.model.Distance;
import org.arcsay.model.LengthUnit;
import org.arcsay.model.Value;
import org.arcsay.model.Value.Angle;
import org.arcsay.model.Value.Extension;
import org.arcsay.model.Value.ExtensionKind;
import org.arcsay.model.Value.Gap;
import org.arcsay.model.Value.NotTested;
import org.arcsay.model.Value.NotTestedReason;
import org.arcsay.model.Value.Phrase;
import org.arcsay.model.Value.Score;
import org.arcsay.model.Value.Span;
import org.arcsay.model.Value.Unquantified;

/**
 * A value taken apart for exchange: the direction is a kind and never a sign.
 *
 * @param kind what sort of value it is
 * @param number the unsigned number, absent when there is none
 * @param unit "deg", "mm", "cm", "in", or "" where there is no unit
 * @param detail the reason for not testing, or the phrase, in lower case with underscores; otherwise ""
 */
public record ValueParts(Kind kind, Optional<BigDecimal> number, String unit, String detail) {
    private static final String DEGREE = "deg";

    /** The sorts of value, with the codes used in exported files. */
    public enum Kind {
        ANGLE,
        DEFICIT,
        NEUTRAL,
        HYPEREXTENSION,
        GAP,
        SPAN,
        SCORE,
        NOT_TESTED,
        DESCRIBED;

        public String code() {
            return lower(this);
        }
    }

    public static ValueParts of(Value value) {
        if (value instanceof Angle angle) {
            return degrees(Kind.ANGLE, angle.degrees());
        }
        if (value instanceof Extension extension) {
            return degrees(Kind.valueOf(extension.kind().name()), extension.degrees());
        }
        if (value instanceof Gap gap) {
            return length(Kind.GAP, gap.distance());
        }
        if (value instanceof Span span) {
            return length(Kind.SPAN, span.distance());
        }
        if (value instanceof Score score) {
            return new ValueParts(Kind.SCORE, Optional.of(BigDecimal.valueOf(score.points())), "", "");
        }
        if (value instanceof NotTested notTested) {
            return new ValueParts(Kind.NOT_TESTED, Optional.empty(), "", lower(notTested.reason()));
        }
        Unquantified described = (Unquantified) value;
        return new ValueParts(Kind.DESCRIBED, Optional.empty(), "", lower(described.phrase()));
    }

    /**
     * The value that these parts make.
     *
     * @throws IllegalArgumentException when they do not fit together; the message says why
     */
    public Value toValue() {
        return switch (kind) {
            case ANGLE -> new Angle(degrees());
            case DEFICIT, NEUTRAL, HYPEREXTENSION -> extension();
            case GAP -> new Gap(distance());
            case SPAN -> new Span(distance());
            case SCORE -> new Score(points());
            case NOT_TESTED -> new NotTested(code(NotTestedReason.class, detail, "detail"));
            case DESCRIBED -> new Unquantified(code(Phrase.class, detail, "detail"));
        };
    }

    /**
     * Refuses a unit that does not belong to a kind.
     *
     * @throws IllegalArgumentException with the right units in the message
     */
    public static void requireUnit(Kind kind, String unit) {
        switch (kind) {
            case ANGLE, DEFICIT, NEUTRAL, HYPEREXTENSION -> require(unit.equals(DEGREE), unit, "an angle is in deg");
            case GAP, SPAN -> require(LengthUnit.withSymbol(unit).isPresent(), unit, "a length is in mm, cm or in");
            case SCORE, NOT_TESTED, DESCRIBED -> require(unit.isEmpty(), unit, "kind " + kind.code() + " has no unit");
        }
    }

    private static void require(boolean fits, String unit, String rule) {
        if (!fits) {
            throw new IllegalArgumentException("unit is '" + unit + "', but " + rule);
        }
    }

    /**
     * The constant whose lower-case name this is.
     *
     * @throws IllegalArgumentException when there is none; the message lists the possible ones
     */
    public static <E extends Enum<E>> E code(Class<E> type, String text, String what) {
        return Arrays.stream(type.getEnumConstants())
                .filter(constant -> lower(constant).equals(text))
                .findFirst()
                .orElseThrow(() -> new IllegalArgumentException(what + " is '" + text + "', but must be one of "
                        + Arrays.stream(type.getEnumConstants())
                                .map(ValueParts::lower)
                                .collect(Collectors.joining(", "))));
    }

    /** The lower-case name of a constant, as exported files use it. */
    public static String lower(Enum<?> constant) {
        return constant.name().toLowerCase(Locale.ROOT);
    }

    private static ValueParts degrees(Kind kind, BigDecimal degrees) {
        return new ValueParts(kind, Optional.of(degrees), DEGREE, "");
    }

    private static ValueParts length(Kind kind, Distance distance) {
        return new ValueParts(
                kind, Optional.of(distance.amount()), distance.unit().symbol(), "");
    }

    private Extension extension() {
        BigDecimal degrees = degrees();
        if ((kind == Kind.NEUTRAL) != (degrees.signum() == 0)) {
            throw new IllegalArgumentException("kind " + kind.code() + " does not fit " + degrees.toPlainString()
                    + " degrees: 0 is neutral, and nothing else is");
        }
        return new Extension(ExtensionKind.valueOf(kind.name()), degrees);
    }

    private BigDecimal degrees() {
        requireUnit(kind, unit);
        return present();
    }

    private Distance distance() {
        requireUnit(kind, unit);
        return new Distance(present(), LengthUnit.withSymbol(unit).orElseThrow());
    }

    private int points() {
        try {
            return present().intValueExact();
        } catch (ArithmeticException e) {
            throw new IllegalArgumentException("an opposition score is a whole number from 0 to 10", e);
        }
    }

    private BigDecimal present() {
        return number.orElseThrow(() -> new IllegalArgumentException("kind " + kind.code() + " needs a value"));
    }
}
