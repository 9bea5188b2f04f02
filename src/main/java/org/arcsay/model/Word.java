package org.arcsay.model;

import java.time.Duration;

/**
 * One recognised word.
 *
 * @param text lower case; {@code [unk]} for sound that is no known word
 * @param start from the beginning of the audio
 * @param end from the beginning of the audio
 * @param confidence 0 to 1 as the recogniser gives it; wrong words can carry 1, so it is shown and never trusted alone
 */
public record Word(String text, Duration start, Duration end, double confidence) {
    public static final String UNKNOWN = "[unk]";
}
