package org.arcsay.recogniser;

/**
 * Faint noise under the sound that the recogniser hears, the same in every run; for one thread.
 *
 * <p>The acoustic network takes digital silence (samples of exactly zero) for words, and in near silence words for nothing. The
 * noise has a normal distribution, twice as strong as Kaldi's own dither; why: docs/decisions/0015-silence-around-the-sound.md.
 * Kaldi's own differs from run to run, so the model turns it off ({@code --dither=0.0}). Only what the recogniser hears is
 * changed, never the sound of the caller.
 */
final class NoiseFloor {
    private static final long SEED = 1;

    /** Standard deviation, in steps of 16 bits. */
    private static final double STRENGTH = 2;

    private final GaussianNoise noise = new GaussianNoise(SEED);

    /** A copy of the first samples with the noise added; continues the noise where the last call ended it. */
    short[] under(short[] samples, int length) {
        return noise.under(samples, length, STRENGTH);
    }
}
