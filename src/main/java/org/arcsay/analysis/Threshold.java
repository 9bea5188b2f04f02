package org.arcsay.analysis;

import java.math.BigDecimal;
import org.arcsay.tables.Provenance;

/**
 * How large a difference must be to count, with where that comes from.
 *
 * @param amount a difference above this is beyond measurement error; one of exactly this is within
 * @param figure the figure of measurement error behind it
 * @param confidence at which it holds
 */
public record Threshold(BigDecimal amount, ErrorFigure figure, ErrorFigure.Confidence confidence) {
    public Provenance provenance() {
        return figure.provenance();
    }

    /** Such as "5 degrees, 95 %, same rater, our default: …". */
    public String words() {
        return figure.scale().count(Difference.shown(amount)) + ", " + confidence.words() + ", "
                + figure.rater().words() + ", " + provenance().words();
    }
}
