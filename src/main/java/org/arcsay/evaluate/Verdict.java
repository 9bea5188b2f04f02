package org.arcsay.evaluate;

/** What came of one recording. */
public enum Verdict {
    /** Accepted with every field as expected; for a recording without a reading: nothing was accepted. */
    RIGHT,
    /** Accepted with a wrong field, or accepted where there was nothing: the worst. */
    WRONG,
    /** Not accepted, and said so. */
    REFUSED,
    /** Stored or held back with a question. */
    ASKED
}
