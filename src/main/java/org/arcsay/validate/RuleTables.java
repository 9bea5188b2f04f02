package org.arcsay.validate;

import org.arcsay.analysis.MeasurementError;

/**
 * Every number that rules use.
 *
 * @param limits largest plausible values
 * @param error measurement error
 * @param sides usual differences between two hands
 * @param thresholds single numbers
 */
public record RuleTables(Limits limits, MeasurementError error, SideDifferences sides, Thresholds thresholds) {
    /** The tables shipped with the program. */
    public static RuleTables shipped() {
        return new RuleTables(
                Limits.shipped(), MeasurementError.standard(), SideDifferences.shipped(), Thresholds.shipped());
    }

    public RuleTables with(Limits other) {
        return new RuleTables(other, error, sides, thresholds);
    }

    public RuleTables with(MeasurementError other) {
        return new RuleTables(limits, other, sides, thresholds);
    }

    public RuleTables with(Thresholds other) {
        return new RuleTables(limits, error, sides, other);
    }

    /** All texts, for checksums. */
    String text() {
        return limits.text() + error.text() + sides.text() + thresholds.text();
    }
}
