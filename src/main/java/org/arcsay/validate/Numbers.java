package org.arcsay.validate;

import java.math.BigDecimal;
import org.arcsay.model.Distance;
import org.arcsay.model.Finding.LabelledNumber;
import org.arcsay.model.LengthUnit;
import org.arcsay.model.Value;
import org.arcsay.model.ValueForm;

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
        ValueForm form = ValueForm.of(value);
        BigDecimal number =
                form.number().orElseThrow(() -> new IllegalArgumentException("'" + value.words() + "' has no number"));
        return form.kind().isAngle()
                ? degrees(label, number)
                : number(label, number, form.length().map(LengthUnit::symbol).orElse(""));
    }

    static LabelledNumber number(String label, BigDecimal number, String unit) {
        return new LabelledNumber(label, number.toPlainString(), unit);
    }
}
