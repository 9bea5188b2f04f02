package org.arcsay.analysis;

import java.math.BigDecimal;
import org.arcsay.model.Dimension;
import org.arcsay.model.Reading;

/** Which of two values is better: more motion, a smaller gap, a wider span, a higher score, and for extension up to neutral only. */
public final class Merit {
    private Merit() {}

    /** A number that grows with how good the reading is; hyperextension is no better than neutral. */
    public static BigDecimal of(Reading reading) {
        BigDecimal number = Amount.of(reading.value()).orElseThrow().number();
        return switch (reading.measure().dimension()) {
            case GAP -> number.negate();
            case EXTENSION -> number.min(BigDecimal.ZERO);
            case ANGLE, SPAN, SCORE -> number;
        };
    }

    static Difference.Trend trend(Reading now, Reading then, BigDecimal change) {
        int order = of(now).compareTo(of(then));
        if (order != 0) {
            return order > 0 ? Difference.Trend.BETTER : Difference.Trend.WORSE;
        }
        boolean equal = change.signum() == 0 || now.measure().dimension() != Dimension.EXTENSION;
        return equal ? Difference.Trend.SAME : Difference.Trend.NEITHER;
    }
}
