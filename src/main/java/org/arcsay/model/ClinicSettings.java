package org.arcsay.model;

/**
 * What a clinic has decided once.
 *
 * @param signConvention the meaning of a spoken minus
 * @param lengthUnit the unit of opposition distances when none is said
 */
public record ClinicSettings(SignConvention signConvention, LengthUnit lengthUnit) {
    /** No sign convention, distances in millimetres. */
    public static ClinicSettings defaults() {
        return new ClinicSettings(SignConvention.UNSET, LengthUnit.MILLIMETRE);
    }
}
