package org.arcsay.model;

import org.arcsay.model.Value.Angle;
import org.arcsay.model.Value.Extension;
import org.arcsay.model.Value.Gap;
import org.arcsay.model.Value.NotTested;
import org.arcsay.model.Value.Score;
import org.arcsay.model.Value.Span;
import org.arcsay.model.Value.Unquantified;

/**
 * The clinical content of one entry.
 *
 * @param side the hand
 * @param measure the motion at a site
 * @param mode active or passive
 * @param value a value whose kind fits the measure's dimension; an extension may also be a plain angle where extension is
 *     natural (wrist, thumb CMC)
 * @param placement where the instrument lay
 */
public record Reading(Side side, Measure measure, Mode mode, Value value, Placement placement) {
    public Reading {
        if (!fits(measure.dimension(), value)) {
            throw new IllegalArgumentException(measure.words() + " cannot be '" + value.words() + "'");
        }
    }

    /** Whether a value of this kind can stand for a measure of that dimension. */
    public static boolean fits(Dimension dimension, Value value) {
        if (value instanceof NotTested || value instanceof Unquantified) {
            return true;
        }
        return switch (dimension) {
            case ANGLE -> value instanceof Angle;
            case EXTENSION -> value instanceof Extension || value instanceof Angle;
            case GAP -> value instanceof Gap;
            case SPAN -> value instanceof Span;
            case SCORE -> value instanceof Score;
        };
    }

    /** Side, measure and mode: what two readings must share to be repeats of each other. */
    public Slot slot() {
        return new Slot(side, measure, mode);
    }

    public Reading withValue(Value other) {
        return new Reading(side, measure, mode, other, placement);
    }

    public Reading withSide(Side other) {
        return new Reading(other, measure, mode, value, placement);
    }

    public Reading withPlacement(Placement other) {
        return new Reading(side, measure, mode, value, other);
    }

    public Reading withMode(Mode other) {
        return new Reading(side, measure, other, value, placement);
    }

    /** Plain words, such as "right IP flexion, active: 75 degrees". */
    public String words() {
        return slot().words() + ": " + value.words();
    }
}
