package org.arcsay.review;

/**
 * A change that could not be stored and waits.
 *
 * @param row the entry it is about, or {@link Draft#NEW}
 * @param message what happened and what to do
 */
public record Unsaved(int row, String message) {}
