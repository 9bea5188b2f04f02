package org.arcsay.model;

import java.util.Locale;

/** Where the instrument lay. */
public enum Placement {
    /** Nothing was said; the clinic's default applies and is not written into the entry. */
    UNSTATED,
    DORSAL,
    LATERAL,
    RULER;

    public String word() {
        return name().toLowerCase(Locale.ROOT);
    }
}
