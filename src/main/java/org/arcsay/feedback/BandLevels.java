package org.arcsay.feedback;

/**
 * How loud a sound is in half octaves from 180 Hz to 5.8 kHz; for one thread. Band-pass filters of constant peak gain, second
 * order: R. Bristow-Johnson, "Cookbook formulae for audio EQ biquad filter coefficients" (from memory).
 */
final class BandLevels {
    static final int BANDS = 11;

    /** The level of digital silence, and the lowest that is given, in dB of full scale. */
    static final double QUIETEST = -96;

    private static final double LOWEST = 180;
    private static final double QUALITY = 2.87;
    private static final double FULL_SCALE = 32768;

    private final Band[] bands = new Band[BANDS];

    /**
     * @param rate samples a second, at least 12 kHz
     */
    BandLevels(int rate) {
        for (int i = 0; i < BANDS; i++) {
            bands[i] = new Band(2 * Math.PI * LOWEST * Math.pow(2, i / 2.0) / rate);
        }
    }

    /** The level of each band over some samples that follow those given before, in dB of full scale. */
    double[] next(short[] samples, int from, int to) {
        double[] levels = new double[BANDS];
        for (int i = 0; i < BANDS; i++) {
            double power = 0;
            for (int at = from; at < to; at++) {
                double passed = bands[i].pass(samples[at] / FULL_SCALE);
                power += passed * passed;
            }
            levels[i] = decibels(power / (to - from));
        }
        return levels;
    }

    static double decibels(double power) {
        return power == 0 ? QUIETEST : Math.max(QUIETEST, 10 * Math.log10(power));
    }

    private static final class Band {
        private final double gain;
        private final double feedback1;
        private final double feedback2;
        private double in1;
        private double in2;
        private double out1;
        private double out2;

        Band(double angle) {
            double alpha = Math.sin(angle) / (2 * QUALITY);
            gain = alpha / (1 + alpha);
            feedback1 = -2 * Math.cos(angle) / (1 + alpha);
            feedback2 = (1 - alpha) / (1 + alpha);
        }

        double pass(double in) {
            double out = gain * (in - in2) - feedback1 * out1 - feedback2 * out2;
            in2 = in1;
            in1 = in;
            out2 = out1;
            out1 = out;
            return out;
        }
    }
}
