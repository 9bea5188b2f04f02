package org.arcsay.analysis;

import java.math.BigDecimal;
import java.math.RoundingMode;

/**
 * A share kept as an exact fraction, so that it is graded before it is rounded.
 *
 * @param part the part
 * @param whole the whole, above 0
 */
public record Percent(BigDecimal part, BigDecimal whole) {
    private static final BigDecimal HUNDRED = BigDecimal.valueOf(100);

    public Percent {
        if (whole.signum() <= 0) {
            throw new IllegalArgumentException("a percentage needs a whole above 0, not " + whole.toPlainString());
        }
    }

    /** Compares with a percentage, exactly: negative, 0 or positive. */
    public int compareTo(BigDecimal percentage) {
        return part.multiply(HUNDRED).compareTo(percentage.multiply(whole));
    }

    /** For showing only. */
    public BigDecimal rounded(int places) {
        return part.multiply(HUNDRED).divide(whole, places, RoundingMode.HALF_UP);
    }

    /** Such as "84.3 % of 140 degrees"; for showing only. */
    public String words() {
        return rounded(1).toPlainString() + " % of " + whole.toPlainString() + " degrees";
    }
}
