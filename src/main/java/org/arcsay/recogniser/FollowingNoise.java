package org.arcsay.recogniser;

import java.util.ArrayDeque;
import java.util.Arrays;
import java.util.Queue;

/**
 * Noise under the sound that the recogniser hears, far below the loudest lately, the same in every run; for one thread.
 *
 * <p>Where a noise gate or a cut leaves silence around words, the acoustic network misses short ones. So the noise is there
 * {@link #LOOK_AHEAD} steps before a sound that gets louder, and fades slowly after it; the sound is held back for as long.
 * Faint voices get fainter noise; knocks do not get more than {@link #STRONGEST}. Why:
 * docs/decisions/0020-noise-that-follows.md.
 */
final class FollowingNoise {
    private static final long SEED = 2;
    private static final int STEPS_A_SECOND = 100;

    /** In steps of a hundredth of a second. */
    static final int LOOK_AHEAD = 3;

    /** Of the root mean square of the loudest step: 40 dB below it. */
    private static final double SHARE = 0.01;

    /** Standard deviation, in steps of 16 bits. */
    static final double STRONGEST = 30;

    /** What is left of the loudness one step later: 4.4 dB less in a second. */
    private static final double FADING = 0.995;

    private final GaussianNoise noise = new GaussianNoise(SEED);
    private final Queue<short[]> waiting = new ArrayDeque<>();
    private short[] newest;
    private int filled;
    private double loudest;

    FollowingNoise(int sampleRate) {
        newest = new short[sampleRate / STEPS_A_SECOND];
    }

    /** The samples that need not wait any more, with the noise added; those of earlier calls first. */
    short[] under(short[] samples, int length) {
        short[] ready = new short[length + newest.length];
        int size = 0;
        for (int i = 0; i < length; i++) {
            newest[filled++] = samples[i];
            if (filled == newest.length) {
                endStep();
                if (waiting.size() > LOOK_AHEAD) {
                    size = append(waiting.remove(), ready, size);
                }
            }
        }
        return Arrays.copyOf(ready, size);
    }

    private void endStep() {
        double sum = 0;
        for (short sample : newest) {
            sum += sample * sample;
        }
        loudest = Math.max(loudest * FADING, Math.sqrt(sum / newest.length));
        waiting.add(newest);
        newest = new short[newest.length];
        filled = 0;
    }

    private int append(short[] step, short[] ready, int size) {
        System.arraycopy(atOnce(step), 0, ready, size, step.length);
        return size + step.length;
    }

    /** All samples that still wait, at the end of the sound. */
    short[] rest() {
        short[] ready = new short[waiting.size() * newest.length + filled];
        int size = 0;
        while (!waiting.isEmpty()) {
            size = append(waiting.remove(), ready, size);
        }
        append(Arrays.copyOf(newest, filled), ready, size);
        filled = 0;
        return ready;
    }

    /** A copy of the samples with noise as strong as it is now. */
    short[] atOnce(short[] samples) {
        return noise.under(samples, samples.length, Math.min(STRONGEST, loudest * SHARE));
    }
}
