package org.arcsay.audio;

import java.time.Duration;

/**
 * Loudness of one stretch of sound.
 *
 * @param peak largest magnitude, 0 to 1 (full scale)
 * @param rms root mean square, 0 to 1
 * @param clippedShare share of the frames at full scale, 0 to 1
 * @param digitalSilence how long the sound has been exactly zero up to the end of the stretch
 */
public record Level(double peak, double rms, double clippedShare, Duration digitalSilence) {
    /** Decibels below full scale for a magnitude of 0 to 1; negative infinity for zero. */
    public static double decibels(double magnitude) {
        return 20 * Math.log10(magnitude);
    }
}
