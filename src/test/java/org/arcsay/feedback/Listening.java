package org.arcsay.feedback;

import java.util.ArrayList;
import java.util.List;

/** Measures sounds from their samples alone, the way an ear would. */
final class Listening {
    private static final int WINDOW = Sound.RATE * 4 / 1000;
    private static final double AUDIBLE = Math.pow(10, -14 / 20.0);

    private Listening() {}

    /** A stretch that is louder than a seventh of the sound's peak, in samples. */
    record Stretch(int from, int to) {
        int millis() {
            return (to - from) * 1000 / Sound.RATE;
        }
    }

    static double peakDb(Sound sound) {
        int peak = 0;
        for (short sample : sound.samples()) {
            peak = Math.max(peak, Math.abs(sample));
        }
        return 20 * Math.log10(peak / 32768.0);
    }

    static double rmsDb(Sound sound) {
        double sum = 0;
        for (short sample : sound.samples()) {
            sum += (double) sample * sample;
        }
        return 10 * Math.log10(sum / sound.length() / (32768.0 * 32768.0));
    }

    static List<Stretch> stretches(Sound sound) {
        double[] envelope = envelope(sound);
        double threshold = max(envelope) * AUDIBLE;
        List<Stretch> found = new ArrayList<>();
        int from = -1;
        for (int i = 0; i <= envelope.length; i++) {
            boolean loud = i < envelope.length && envelope[i] > threshold;
            if (loud && from < 0) {
                from = i;
            } else if (!loud && from >= 0) {
                found.add(new Stretch(from * WINDOW, i * WINDOW));
                from = -1;
            }
        }
        return found;
    }

    /** The fundamental around a sample in hertz, from the first strong peak of the autocorrelation. */
    static double pitch(Sound sound, int around) {
        int half = Sound.RATE * 12 / 1000;
        int from = Math.max(0, Math.min(sound.length() - 2 * half, around - half));
        double[] correlation = new double[Sound.RATE / 200];
        for (int lag = 0; lag < correlation.length; lag++) {
            for (int i = from; i + lag < from + 2 * half; i++) {
                correlation[lag] += (double) sound.sample(i) * sound.sample(i + lag);
            }
            correlation[lag] /= 2 * half - lag;
        }
        int lag = 1;
        while (correlation[lag] > 0) {
            lag++;
        }
        int best = lag;
        for (; lag < correlation.length - 1; lag++) {
            best = correlation[lag] > correlation[best] * 1.02 ? lag : best;
        }
        double left = correlation[best - 1];
        double right = correlation[best + 1];
        double shift = (left - right) / (2 * (left - 2 * correlation[best] + right));
        return Sound.RATE / (best + shift);
    }

    /** The biggest jump between neighbouring samples, as a part of full scale. */
    static double biggestStep(Sound sound) {
        int biggest = 0;
        for (int i = 1; i < sound.length(); i++) {
            biggest = Math.max(biggest, Math.abs(sound.sample(i) - sound.sample(i - 1)));
        }
        return biggest / 32768.0;
    }

    private static double[] envelope(Sound sound) {
        double[] envelope = new double[sound.length() / WINDOW];
        for (int i = 0; i < envelope.length; i++) {
            double sum = 0;
            for (int k = 0; k < WINDOW; k++) {
                double sample = sound.sample(i * WINDOW + k);
                sum += sample * sample;
            }
            envelope[i] = Math.sqrt(sum / WINDOW);
        }
        return envelope;
    }

    private static double max(double[] values) {
        double max = 0;
        for (double value : values) {
            max = Math.max(max, value);
        }
        return max;
    }
}
