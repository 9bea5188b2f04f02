package org.arcsay.feedback;

import java.util.List;

/** Additive synthesis of notes: a fundamental with two soft overtones under raised-cosine fades. */
final class Tones {
    /** -12 dBFS. */
    static final double PEAK = Short.MAX_VALUE * Math.pow(10, -12 / 20.0);

    private static final double[] OVERTONES = {1, 0.3, 0.12};
    private static final int FADE = Sound.RATE * 8 / 1000;

    private Tones() {}

    static Sound render(List<Earcon.Note> notes) {
        int end = notes.stream()
                .mapToInt(note -> note.start() + note.length())
                .max()
                .orElse(0);
        double[] mix = new double[end * Sound.RATE / 1000];
        notes.forEach(note -> add(note, mix));
        return Sound.of(toPeak(mix));
    }

    private static void add(Earcon.Note note, double[] mix) {
        int start = note.start() * Sound.RATE / 1000;
        int length = note.length() * Sound.RATE / 1000;
        double phase = 0;
        for (int i = 0; i < length; i++) {
            double pitch = note.from() + (note.to() - note.from()) * i / length;
            phase += 2 * Math.PI * pitch / Sound.RATE;
            mix[start + i] += wave(phase) * envelope(i, length);
        }
    }

    private static double wave(double phase) {
        double sum = 0;
        for (int k = 0; k < OVERTONES.length; k++) {
            sum += OVERTONES[k] * Math.sin(phase * (k + 1));
        }
        return sum;
    }

    private static double envelope(int i, int length) {
        int edge = Math.min(i, length - 1 - i);
        return edge >= FADE ? 1 : (1 - Math.cos(Math.PI * edge / FADE)) / 2;
    }

    private static short[] toPeak(double[] mix) {
        double peak = 0;
        for (double value : mix) {
            peak = Math.max(peak, Math.abs(value));
        }
        short[] samples = new short[mix.length];
        for (int i = 0; i < mix.length; i++) {
            samples[i] = (short) Math.round(mix[i] / peak * PEAK);
        }
        return samples;
    }
}
