package org.arcsay.parser;

import org.arcsay.model.Value.ExtensionKind;

/** How the direction of an extension was said. */
public enum SpokenKind {
    HYPEREXTENSION,
    DEFICIT,
    /** A deficit on active testing, by the meaning of the word. */
    LAG,
    NEUTRAL,
    /** A bare minus, whose meaning depends on the clinic's convention. */
    MINUS,
    /** A bare plus, whose meaning depends on the clinic's convention. */
    PLUS,
    /** "Extension ten" with no direction at all. */
    BARE;

    /** Whether the words alone tell on which side of neutral the joint rests. */
    public boolean isClear() {
        return this == HYPEREXTENSION || this == DEFICIT || this == LAG || this == NEUTRAL;
    }

    /**
     * The kind that the words alone tell.
     *
     * @throws IllegalStateException when they do not; see {@link #isClear()}
     */
    public ExtensionKind clear() {
        return switch (this) {
            case HYPEREXTENSION -> ExtensionKind.HYPEREXTENSION;
            case DEFICIT, LAG -> ExtensionKind.DEFICIT;
            case NEUTRAL -> ExtensionKind.NEUTRAL;
            default -> throw new IllegalStateException(this + " is not clear by itself");
        };
    }
}
