package org.arcsay.model;

import java.math.BigDecimal;
import java.util.Optional;
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
 * A value taken apart, for everything that writes values down; each writer has its own words for the parts.
 *
 * @param kind what sort of value it is
 * @param number the unsigned number: degrees, points, or in the unit of the length; absent when there is none
 * @param length the unit, for lengths only
 * @param word name of the {@link NotTestedReason} or {@link Phrase} that stands in place of a number
 */
public record ValueForm(Kind kind, Optional<BigDecimal> number, Optional<LengthUnit> length, Optional<String> word) {

    /** The sorts of value; the direction of an extension is a sort and never a sign. */
    public enum Kind {
        ANGLE,
        DEFICIT,
        NEUTRAL,
        HYPEREXTENSION,
        GAP,
        SPAN,
        SCORE,
        NOT_TESTED,
        UNQUANTIFIED;

        /** Whether its number is in degrees. */
        public boolean isAngle() {
            return compareTo(HYPEREXTENSION) <= 0;
        }

        /** Whether its number is a length. */
        public boolean isLength() {
            return this == GAP || this == SPAN;
        }
    }

    public static ValueForm of(Value value) {
        if (value instanceof Angle angle) {
            return number(Kind.ANGLE, angle.degrees());
        }
        if (value instanceof Extension extension) {
            return number(Kind.valueOf(extension.kind().name()), extension.degrees());
        }
        if (value instanceof Gap gap) {
            return length(Kind.GAP, gap.distance());
        }
        if (value instanceof Span span) {
            return length(Kind.SPAN, span.distance());
        }
        if (value instanceof Score score) {
            return number(Kind.SCORE, BigDecimal.valueOf(score.points()));
        }
        if (value instanceof NotTested notTested) {
            return word(Kind.NOT_TESTED, notTested.reason());
        }
        return word(Kind.UNQUANTIFIED, ((Unquantified) value).phrase());
    }

    /** A value that is told by a number without a unit of length. */
    public static ValueForm number(Kind kind, BigDecimal number) {
        return new ValueForm(kind, Optional.of(number), Optional.empty(), Optional.empty());
    }

    /** A value that is a distance. */
    public static ValueForm length(Kind kind, Distance distance) {
        return new ValueForm(kind, Optional.of(distance.amount()), Optional.of(distance.unit()), Optional.empty());
    }

    /** A value that is told by a word. */
    public static ValueForm word(Kind kind, Enum<?> word) {
        return new ValueForm(kind, Optional.empty(), Optional.empty(), Optional.of(word.name()));
    }

    /**
     * The value that these parts make.
     *
     * @throws IllegalArgumentException when they do not fit together
     * @throws ArithmeticException when the points of a score are not whole
     */
    public Value value() {
        return switch (kind) {
            case ANGLE -> new Angle(present(number));
            case DEFICIT, NEUTRAL, HYPEREXTENSION -> new Extension(ExtensionKind.valueOf(kind.name()), present(number));
            case GAP -> new Gap(distance());
            case SPAN -> new Span(distance());
            case SCORE -> new Score(present(number).intValueExact());
            case NOT_TESTED -> new NotTested(NotTestedReason.valueOf(present(word)));
            case UNQUANTIFIED -> new Unquantified(Phrase.valueOf(present(word)));
        };
    }

    private Distance distance() {
        return new Distance(present(number), present(length));
    }

    private <T> T present(Optional<T> part) {
        return part.orElseThrow(
                () -> new IllegalArgumentException("a part of a value of kind " + kind + " is missing"));
    }
}
