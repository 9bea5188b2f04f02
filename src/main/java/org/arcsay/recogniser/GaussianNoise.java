package org.arcsay.recogniser;

import java.util.Random;

/** White noise of a normal distribution, the same in every run; for one thread. */
final class GaussianNoise {
    private final Random random;

    GaussianNoise(long seed) {
        random = new Random(seed);
    }

    /**
     * A copy of the first samples with the noise added; continues the noise where the last call ended it.
     *
     * @param strength standard deviation, in steps of 16 bits
     */
    short[] under(short[] samples, int length, double strength) {
        short[] noisy = new short[length];
        for (int i = 0; i < length; i++) {
            long sum = samples[i] + Math.round(strength * random.nextGaussian());
            noisy[i] = (short) Math.max(Short.MIN_VALUE, Math.min(Short.MAX_VALUE, sum));
        }
        return noisy;
    }
}
