package org.arcsay.model;

/** What kind of number a measure has; two dimensions are never compared or put into one field. */
public enum Dimension {
    /** Degrees from neutral in the direction that the motion names, 0 to 180. */
    ANGLE,
    /** How far a joint straightens: a deficit, exactly neutral, or beyond neutral. */
    EXTENSION,
    /** A distance from the thumb tip to a target; 0 means touching, smaller is better. */
    GAP,
    /** A distance that is better when bigger, such as the width of the web space. */
    SPAN,
    /** The opposition score, a whole number from 0 to 10. */
    SCORE
}
