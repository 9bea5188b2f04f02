package org.arcsay.model;

import java.math.BigDecimal;
import java.util.Arrays;
import java.util.Optional;

/** Units of length in which a distance may be said. One inch is exactly 25.4 mm (international yard and pound agreement, 1959). */
public enum LengthUnit {
    MILLIMETRE("mm", "mm", "1"),
    CENTIMETRE("cm", "cm", "10"),
    INCH("in", "[in_i]", "25.4");

    private final String symbol;
    private final String ucum;
    private final BigDecimal millimetres;

    LengthUnit(String symbol, String ucum, String millimetres) {
        this.symbol = symbol;
        this.ucum = ucum;
        this.millimetres = new BigDecimal(millimetres);
    }

    public String symbol() {
        return symbol;
    }

    /** The unit with that symbol. */
    public static Optional<LengthUnit> withSymbol(String symbol) {
        return Arrays.stream(values())
                .filter(unit -> unit.symbol.equals(symbol))
                .findFirst();
    }

    /** The code of this unit in the Unified Code for Units of Measure. */
    public String ucum() {
        return ucum;
    }

    /** How many millimetres one unit is, exactly. */
    public BigDecimal millimetres() {
        return millimetres;
    }
}
