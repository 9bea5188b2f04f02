package org.arcsay.recogniser;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import org.junit.jupiter.api.Test;

/** Against the definition of the decibel: 20 log10 of the ratio of root mean squares (common practice). */
class RecentLevelsTest {
    private static final int RATE = 16_000;

    private final Random random = new Random(3);
    private final RecentLevels levels = new RecentLevels(RATE);

    /** The loudest and the quietest tenth of white noise in steps of 400 samples lie 0.4 dB from its mean. */
    @Test
    void speechTenTimesAsStrongAsTheSoundAroundItIsTwentyDecibelsAbove() {
        add(300, RATE);
        add(3000, RATE);
        add(300, RATE);
        assertThat(levels.signalToNoise(RATE, 2 * RATE)).isCloseTo(20, within(1.0));
        assertThat(levels.signalToNoise(0, RATE / 2)).isCloseTo(0, within(1.5));
    }

    /** The first difference of white noise x[n] - 0.97 x[n-1] is stronger than it by 10 log10(1 + 0.97 squared), 2.9 dB. */
    @Test
    void digitalSilenceIsOneStep() {
        add(0, RATE);
        add(1000, RATE);
        add(0, RATE);
        assertThat(levels.signalToNoise(RATE, 2 * RATE)).isCloseTo(60 + 2.9, within(1.0));
    }

    /** Gain of the pre-emphasis at 50 Hz, by its transfer function: 20 log10 |1 - 0.97 exp(-j 2 pi 50 / 16000)| = -29 dB. */
    @Test
    void humHardlyCounts() {
        short[] sound = new short[3 * RATE];
        for (int i = 0; i < sound.length; i++) {
            double speech = i >= RATE && i < 2 * RATE ? 1000 * random.nextGaussian() : 0;
            sound[i] = (short) Math.round(speech + 1000 * Math.sqrt(2) * Math.sin(2 * Math.PI * 50 * i / RATE));
        }
        levels.add(sound, sound.length);
        assertThat(levels.signalToNoise(RATE, 2 * RATE)).isCloseTo(29 + 2.9, within(2.0));
    }

    @Test
    void aPauseInsideTheSpeechShowsTheBackground() {
        for (int i = 0; i < 5; i++) {
            add(3000, RATE);
            add(300, RATE / 4);
        }
        assertThat(levels.signalToNoise(0, 6 * RATE)).isCloseTo(20, within(1.0));
    }

    @Test
    void whatIsForgottenOrNotYetThereHasNoLevel() {
        add(300, 61 * RATE);
        assertThat(levels.signalToNoise(0, RATE / 2)).isEqualTo(Double.POSITIVE_INFINITY);
        assertThat(levels.signalToNoise(62L * RATE, 63L * RATE)).isEqualTo(Double.POSITIVE_INFINITY);
        assertThat(levels.signalToNoise(60L * RATE, 61L * RATE)).isLessThan(10);
    }

    private void add(double rms, int count) {
        short[] samples = new short[count];
        for (int i = 0; i < count; i++) {
            samples[i] = (short) Math.round(rms * random.nextGaussian());
        }
        levels.add(samples, count);
    }
}
