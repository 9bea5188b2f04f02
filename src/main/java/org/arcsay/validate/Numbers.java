package org.arcsay.validate;

import java.math.BigDecimal;
import org.arcsay.model.Distance;
import org.arcsay.model.Finding.LabelledNumber;
import org.arcsay.model.Value;

/** Labelled numbers for findings. */
final class Numbers {
    private Numbers() {}

    static LabelledNumber degrees(String label, BigDecimal degrees) {
        return new LabelledNumber(label, degrees.toPlainString(), "degrees");
    }

    static LabelledNumber distance(String label, Distance distance) {
        return new LabelledNumber(
                label, distance.amount().toPlainString(), distance.unit().symbol());
    }

    /** The number of a measured value, as it was said. */
    static LabelledNumber of(String label, Value value) {
        if (value instanceof Value.Angle angle) {
            return degrees(label, angle.degrees());
        }
        if (value instanceof Value.Extension extension) {
            return degrees(label, extension.degrees());
        }
        if (value instanceof Value.Gap gap) {
            return distance(label, gap.distance());
        }
        if (value instanceof Value.Span span) {
            return distance(label, span.distance());
        }
        if (value instanceof Value.Score score) {
            return new LabelledNumber(label, Integer.toString(score.points()), "");
        }
        throw new IllegalArgumentException("'" + value.words() + "' has no number");
    }

    static LabelledNumber number(String label, BigDecimal number, String unit) {
        return new LabelledNumber(label, number.toPlainString(), unit);
    }
}
