package org.arcsay.model;

import java.math.BigDecimal;
import java.math.MathContext;

/**
 * A length as it was said; the unit is kept and conversion is exact where a finite decimal exists.
 *
 * @param amount 0 to 999 in the given unit
 * @param unit the unit that was said or set for the series
 */
public record Distance(BigDecimal amount, LengthUnit unit) {
    public Distance {
        amount = Decimals.within(amount, 0, 999, "a distance");
    }

    public static Distance of(String amount, LengthUnit unit) {
        return new Distance(new BigDecimal(amount), unit);
    }

    /** Exactly this length in millimetres. */
    public BigDecimal millimetres() {
        return Decimals.canonical(amount.multiply(unit.millimetres()));
    }

    /** This length in another unit: exact for mm and cm, to 34 significant digits for inches. */
    public Distance in(LengthUnit other) {
        if (other == unit) {
            return this;
        }
        return new Distance(millimetres().divide(other.millimetres(), MathContext.DECIMAL128), other);
    }

    @Override
    public String toString() {
        return amount.toPlainString() + " " + unit.symbol();
    }
}
