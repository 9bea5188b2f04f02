package org.arcsay.feedback;

/**
 * Makes speech quicker or slower and keeps its pitch: overlapping windows are laid at the new spacing, each shifted a little to
 * where it fits best onto what is already there (waveform-similarity overlap-add; Verhelst and Roelands, ICASSP 1993).
 */
final class TimeScale {
    private static final int WINDOW = Sound.RATE * 30 / 1000;
    private static final int HOP = WINDOW / 2;
    private static final int SEARCH = Sound.RATE * 8 / 1000;
    private static final double[] HANN = hann();

    private TimeScale() {}

    /**
     * @param rate how many times quicker, 0.5 to 2
     */
    static Sound change(Sound sound, double rate) {
        if (rate == 1 || sound.length() < 2 * WINDOW) {
            return sound;
        }
        short[] in = sound.samples();
        double[] out = new double[(int) (in.length / rate) + WINDOW];
        int last = 0;
        for (int frame = 0; frame * HOP + WINDOW <= out.length; frame++) {
            int wanted = (int) (frame * HOP * rate);
            int from = frame == 0 ? 0 : bestStart(in, last + HOP, wanted);
            overlap(in, from, out, frame * HOP, frame == 0);
            last = from;
        }
        return Sound.of(rounded(out, (int) (in.length / rate)));
    }

    private static int bestStart(short[] in, int natural, int wanted) {
        int best = wanted;
        double bestScore = Double.NEGATIVE_INFINITY;
        for (int start = Math.max(0, wanted - SEARCH); start <= wanted + SEARCH; start += 2) {
            double score = similarity(in, natural, start);
            if (score > bestScore) {
                bestScore = score;
                best = start;
            }
        }
        return best;
    }

    private static double similarity(short[] in, int a, int b) {
        double product = 0;
        double energy = 1;
        for (int i = 0; i < HOP; i += 2) {
            double there = at(in, b + i);
            product += at(in, a + i) * there;
            energy += there * there;
        }
        return product / Math.sqrt(energy);
    }

    private static void overlap(short[] in, int from, double[] out, int to, boolean first) {
        for (int i = 0; i < WINDOW; i++) {
            double weight = first && i < HOP ? 1 : HANN[i];
            out[to + i] += at(in, from + i) * weight;
        }
    }

    private static double at(short[] in, int index) {
        return index < in.length ? in[index] : 0;
    }

    private static short[] rounded(double[] out, int length) {
        short[] samples = new short[length];
        for (int i = 0; i < length; i++) {
            samples[i] = (short) Math.max(Short.MIN_VALUE, Math.min(Short.MAX_VALUE, Math.round(out[i])));
        }
        return samples;
    }

    private static double[] hann() {
        double[] window = new double[WINDOW];
        for (int i = 0; i < WINDOW; i++) {
            window[i] = 0.5 - 0.5 * Math.cos(2 * Math.PI * i / WINDOW);
        }
        return window;
    }
}
