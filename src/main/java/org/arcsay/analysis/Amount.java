package org.arcsay.analysis;

import java.math.BigDecimal;
import java.util.Optional;
import org.arcsay.model.Value;

/**
 * The number of a value on the scale on which it is compared. For arithmetic only; what is shown is the value itself.
 *
 * @param number degrees (for extension: positive beyond neutral, negative short of it), millimetres, or points
 * @param scale which of them
 */
public record Amount(BigDecimal number, Scale scale) {
    /** What the number counts. */
    public enum Scale {
        DEGREES("degrees", "degree"),
        MILLIMETRES("mm", "mm"),
        POINTS("points", "point");

        private final String unit;
        private final String one;

        Scale(String unit, String one) {
            this.unit = unit;
            this.one = one;
        }

        public String unit() {
            return unit;
        }

        /** A number as shown with its unit, such as "5 degrees" or "1 point". */
        public String count(String shown) {
            return shown + " " + (shown.equals("1") ? one : unit);
        }

        /**
         * @throws IllegalArgumentException when no scale has that unit
         */
        public static Scale parse(String unit) {
            for (Scale scale : values()) {
                if (scale.unit.equals(unit)) {
                    return scale;
                }
            }
            throw new IllegalArgumentException("'unit' must be degrees, mm or points, not '" + unit + "'");
        }
    }

    /** The amount of a value, or nothing where it carries no number. */
    public static Optional<Amount> of(Value value) {
        if (value instanceof Value.Angle angle) {
            return Optional.of(new Amount(angle.degrees(), Scale.DEGREES));
        }
        if (value instanceof Value.Extension extension) {
            return Optional.of(new Amount(extension.beyondNeutral(), Scale.DEGREES));
        }
        if (value instanceof Value.Gap gap) {
            return Optional.of(new Amount(gap.distance().millimetres(), Scale.MILLIMETRES));
        }
        if (value instanceof Value.Span span) {
            return Optional.of(new Amount(span.distance().millimetres(), Scale.MILLIMETRES));
        }
        return value instanceof Value.Score score
                ? Optional.of(new Amount(BigDecimal.valueOf(score.points()), Scale.POINTS))
                : Optional.empty();
    }

    /**
     * This amount less another.
     *
     * @throws IllegalArgumentException when the scales differ
     */
    public BigDecimal minus(Amount other) {
        if (scale != other.scale) {
            throw new IllegalArgumentException("cannot compare " + scale.unit() + " with " + other.scale.unit());
        }
        return number.subtract(other.number);
    }

    /** The number with its unit, such as "12.5 mm". */
    public String words() {
        return scale.count(number.toPlainString());
    }
}
