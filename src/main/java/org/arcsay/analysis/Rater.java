package org.arcsay.analysis;

/** Whether two readings that are compared were taken by the same person. */
public enum Rater {
    SAME,
    DIFFERENT;

    public String words() {
        return this == SAME ? "same rater" : "different raters";
    }
}
