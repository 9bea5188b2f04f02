package org.arcsay.model;

import java.math.BigDecimal;

/** One canonical form for decimal numbers, so that 7.50 and 7.5 are the same reading. */
final class Decimals {
    private Decimals() {}

    static BigDecimal canonical(BigDecimal number) {
        BigDecimal stripped = number.stripTrailingZeros();
        return stripped.scale() < 0 ? stripped.setScale(0) : stripped;
    }

    static BigDecimal within(BigDecimal number, int low, int high, String what) {
        if (number.compareTo(BigDecimal.valueOf(low)) < 0 || number.compareTo(BigDecimal.valueOf(high)) > 0) {
            throw new IllegalArgumentException(
                    what + " must be between " + low + " and " + high + ", not " + number.toPlainString());
        }
        return canonical(number);
    }
}
