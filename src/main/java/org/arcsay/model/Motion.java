package org.arcsay.model;

import java.util.Locale;

/** What is measured at a site. */
public enum Motion {
    FLEXION(Dimension.ANGLE),
    EXTENSION(Dimension.EXTENSION),
    RADIAL_ABDUCTION(Dimension.ANGLE),
    PALMAR_ABDUCTION(Dimension.ANGLE),
    ADDUCTION(Dimension.ANGLE),
    RADIAL_DEVIATION(Dimension.ANGLE),
    ULNAR_DEVIATION(Dimension.ANGLE),
    PRONATION(Dimension.ANGLE),
    SUPINATION(Dimension.ANGLE),
    /** Distance from the thumb tip to the site in opposition. */
    OPPOSITION_GAP(Dimension.GAP),
    /** Distance across the web space; bigger is better. */
    WEB_SPAN(Dimension.SPAN),
    /** The ten-stage opposition score (Kapandji AI, Ann Chir Main 1986;5:67-73). */
    OPPOSITION_SCORE(Dimension.SCORE);

    private final Dimension dimension;

    Motion(Dimension dimension) {
        this.dimension = dimension;
    }

    public Dimension dimension() {
        return dimension;
    }

    /** The plain words, such as "radial abduction". */
    public String words() {
        return name().toLowerCase(Locale.ROOT).replace('_', ' ');
    }
}
