package org.arcsay.analysis;

import java.math.BigDecimal;
import java.util.Optional;
import org.arcsay.model.Dimension;
import org.arcsay.tables.MeasurePattern;
import org.arcsay.tables.Provenance;
import org.arcsay.tables.Row;

/**
 * One normative value.
 *
 * @param pattern the measure and mode
 * @param mean the mean or handbook value; for extension positive beyond neutral, negative short of it
 * @param sd standard deviation, if published
 * @param low lowest value seen, if published
 * @param high highest value seen, if published
 * @param scale the unit of all four
 * @param sample who was measured
 * @param provenance where it comes from
 */
public record Norm(
        MeasurePattern pattern,
        BigDecimal mean,
        Optional<BigDecimal> sd,
        Optional<BigDecimal> low,
        Optional<BigDecimal> high,
        Amount.Scale scale,
        String sample,
        Provenance provenance) {
    static Norm read(Row row) {
        return new Norm(
                MeasurePattern.read(row),
                row.number("mean"),
                row.optionalNumber("sd"),
                row.optionalNumber("low"),
                row.optionalNumber("high"),
                Amount.Scale.parse(row.text("unit")),
                row.text("sample"),
                row.provenance());
    }

    /** The value and the range seen, without unit, such as "88 (80 to 90)". */
    public String brief() {
        if (low.isEmpty() || high.isEmpty()) {
            return value(mean);
        }
        boolean beyondOnly =
                pattern.motion().dimension() == Dimension.EXTENSION && low.get().signum() >= 0;
        return beyondOnly
                ? mean.toPlainString() + " (" + low.get().toPlainString() + " to " + value(high.get()) + ")"
                : value(mean) + " (" + value(low.get()) + " to " + value(high.get()) + ")";
    }

    /** The value with spread, range, sample, source and mark, such as "88 degrees (range 80 to 90), 100 adults; …". */
    public String words() {
        StringBuilder words = new StringBuilder(value(mean)).append(' ').append(scale.unit());
        sd.ifPresent(spread -> words.append(", SD ").append(spread.toPlainString()));
        if (low.isPresent() && high.isPresent()) {
            words.append(" (range ")
                    .append(value(low.get()))
                    .append(" to ")
                    .append(value(high.get()))
                    .append(')');
        }
        return words.append(", ")
                .append(sample)
                .append("; ")
                .append(provenance.words())
                .toString();
    }

    /** Whether an amount lies in the published range, where there is one. */
    public Optional<Boolean> inRange(Amount amount) {
        if (low.isEmpty() || high.isEmpty() || amount.scale() != scale) {
            return Optional.empty();
        }
        return Optional.of(
                amount.number().compareTo(low.get()) >= 0 && amount.number().compareTo(high.get()) <= 0);
    }

    private String value(BigDecimal number) {
        if (pattern.motion().dimension() != Dimension.EXTENSION || number.signum() == 0) {
            return number.toPlainString();
        }
        return number.abs().toPlainString() + (number.signum() < 0 ? " short of neutral" : " beyond neutral");
    }
}
