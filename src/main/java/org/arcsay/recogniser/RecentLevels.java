package org.arcsay.recogniser;

import java.util.Arrays;

/**
 * How loud the last minute of a stream was, in steps of a fortieth of a second; for one thread. Low frequencies count
 * less, as they do for the recogniser, so that ventilation and hum are not taken for loud noise.
 */
final class RecentLevels {
    private static final int STEPS_A_SECOND = 40;
    private static final int SECONDS = 60;

    /** Sound around an utterance that belongs to its background: before its first word, and after its last one has faded. */
    private static final double BEFORE = 0.5;

    private static final double AFTER = 0.3;

    /** The background is as loud as this share of the quietest steps, speech as loud as this share of the loudest. */
    private static final double SHARE = 0.1;

    /** The usual pre-emphasis of speech recognition: this share of the sample before is taken off. */
    private static final double EMPHASIS = 0.97;

    /** One step of 16 bits: digital silence has no level. */
    private static final double FAINTEST = 1;

    private final double[] powers = new double[STEPS_A_SECOND * SECONDS];
    private final int framesAStep;
    private long steps;
    private double sum;
    private int summed;
    private short before;

    RecentLevels(int sampleRate) {
        framesAStep = sampleRate / STEPS_A_SECOND;
    }

    void add(short[] samples, int length) {
        for (int i = 0; i < length; i++) {
            double emphasised = samples[i] - EMPHASIS * before;
            before = samples[i];
            sum += emphasised * emphasised;
            if (++summed == framesAStep) {
                powers[(int) (steps++ % powers.length)] = sum / framesAStep;
                sum = 0;
                summed = 0;
            }
        }
    }

    /**
     * By how many decibels the loud parts of an utterance are above the quiet parts of it and of the sound around it.
     *
     * @param from first frame of the whole stream that belongs to it
     * @param to the frame after its last one
     * @return infinite where nothing of it is known any more
     */
    double signalToNoise(long from, long to) {
        double first = (double) from / framesAStep;
        double last = (double) to / framesAStep;
        double[] speech = sorted(first, last);
        double[] around = sorted(first - BEFORE * STEPS_A_SECOND, last + AFTER * STEPS_A_SECOND);
        if (speech.length == 0) {
            return Double.POSITIVE_INFINITY;
        }
        double loud = speech[(int) ((speech.length - 1) * (1 - SHARE))];
        double quiet = around[(int) ((around.length - 1) * SHARE)];
        return 10 * Math.log10(Math.max(loud, FAINTEST) / Math.max(quiet, FAINTEST));
    }

    private double[] sorted(double first, double last) {
        long begin = Math.max(Math.max(0, steps - powers.length), (long) first);
        long end = Math.min(steps, (long) Math.ceil(last));
        double[] some = new double[(int) Math.max(0, end - begin)];
        for (int i = 0; i < some.length; i++) {
            some[i] = powers[(int) ((begin + i) % powers.length)];
        }
        Arrays.sort(some);
        return some;
    }
}
