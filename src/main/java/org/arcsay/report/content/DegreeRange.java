package org.arcsay.report.content;

import java.math.BigDecimal;

/**
 * Where a joint moves, for drawing.
 *
 * @param from its straightest position in degrees of flexion: below 0 beyond neutral, above 0 short of it
 * @param to its most bent position in degrees
 */
public record DegreeRange(BigDecimal from, BigDecimal to) {
    /** Such as "lacks 15 degrees, to 50 degrees"; only the end where it begins at neutral. */
    public String words() {
        String end = to.toPlainString() + " degrees";
        if (from.signum() == 0) {
            return end;
        }
        String start = from.signum() > 0 ? "lacks " : "hyperextends ";
        return start + from.abs().toPlainString() + " degrees, to " + end;
    }
}
