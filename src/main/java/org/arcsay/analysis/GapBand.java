package org.arcsay.analysis;

import java.math.BigDecimal;
import org.arcsay.model.Distance;
import org.arcsay.model.LengthUnit;

/**
 * The three bands of the gap between thumb and fingers in US federal examinations (38 CFR 4.71a, diagnostic code 5228; hand
 * questionnaire of the US Department of Veterans Affairs, 2011). The bounds are exact inches; both bounds belong to the
 * middle band. A band is a description; what it is worth is not computed.
 */
public enum GapBand {
    LESS_THAN_ONE_INCH("less than 1 inch (2.5 cm)"),
    ONE_TO_TWO_INCHES("1 to 2 inches (2.5 to 5.1 cm)"),
    MORE_THAN_TWO_INCHES("more than 2 inches (5.1 cm)");

    /** Where the bands come from, in short. */
    public static final String SOURCE = "bands of 38 CFR 4.71a, code 5228";

    private static final BigDecimal ONE_INCH = LengthUnit.INCH.millimetres();
    private static final BigDecimal TWO_INCHES = ONE_INCH.multiply(BigDecimal.valueOf(2));

    private final String words;

    GapBand(String words) {
        this.words = words;
    }

    public String words() {
        return words;
    }

    public static GapBand of(Distance gap) {
        BigDecimal millimetres = gap.millimetres();
        if (millimetres.compareTo(ONE_INCH) < 0) {
            return LESS_THAN_ONE_INCH;
        }
        return millimetres.compareTo(TWO_INCHES) <= 0 ? ONE_TO_TWO_INCHES : MORE_THAN_TWO_INCHES;
    }
}
