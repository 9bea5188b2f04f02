package org.arcsay.model;

/** What a bare "minus ten" means for extension in this clinic. Both customs exist, so without a setting we ask. */
public enum SignConvention {
    UNSET,
    /** Minus is what lacks to neutral, plus is hyperextension. */
    MINUS_IS_DEFICIT,
    /** Minus is hyperextension, plus is what lacks to neutral. */
    MINUS_IS_HYPEREXTENSION
}
