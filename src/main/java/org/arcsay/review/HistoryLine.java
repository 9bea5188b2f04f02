package org.arcsay.review;

import java.time.OffsetDateTime;

/**
 * One step in the life of a reading.
 *
 * @param at when it happened
 * @param words what happened, in words
 * @param by who did it, or empty when nobody said
 * @param why the reason given, or empty
 */
public record HistoryLine(OffsetDateTime at, String words, String by, String why) {
    /** One sentence without the time. */
    public String sentence() {
        return words + (by.isBlank() ? "" : ", by " + by) + (why.isBlank() ? "" : ": " + why);
    }
}
