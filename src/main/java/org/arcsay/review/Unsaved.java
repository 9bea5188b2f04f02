package org.arcsay.review;

/**
 * A change that could not be stored and waits.
 *
 * @param row the entry it is about, or {@link Draft#NEW}
 * @param change the sentence that will tell that it was done
 * @param message what happened and what to do
 */
public record Unsaved(int row, String change, String message) {}
