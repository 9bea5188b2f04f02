package org.arcsay.feedback;

/** How much of an answer sounds. */
public enum FeedbackLevel {
    /** A tone, then side, joint, motion, mode, value and unit in words. */
    FULL,
    /** A tone, then only what may be wrong: joint, motion and value, and side or mode where they changed. */
    SHORT,
    /** A tone alone. */
    TONES,
    /** Nothing sounds; the screen still shows every answer. */
    OFF;

    public boolean speaks() {
        return this == FULL || this == SHORT;
    }

    public boolean sounds() {
        return this != OFF;
    }
}
