package org.arcsay.feedback;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * A sine of half the full amplitude has a level of 20 lg (0.5 / √2) = -9.03 dB of full scale. The cookbook's band-pass has 0 dB
 * at its centre and falls by 6 dB an octave far from it (second order; from memory).
 */
class BandLevelsTest {
    private static final double LEVEL = -9.03;

    @ParameterizedTest
    @CsvSource({"0, 16000", "5, 16000", "10, 16000", "5, 44100", "10, 48000"})
    void aToneIsAtItsLevelInItsBandAndFarLowerInOthers(int band, int rate) {
        double[] levels = steady(180 * Math.pow(2, band / 2.0), rate);
        assertThat(levels[band]).isCloseTo(LEVEL, within(0.3));
        for (int other = 0; other < levels.length; other++) {
            if (Math.abs(other - band) >= 4) {
                assertThat(levels[other]).as("band %d", other).isLessThan(LEVEL - 15);
            }
        }
    }

    @ParameterizedTest
    @CsvSource({"16000", "48000"})
    void silenceIsQuietest(int rate) {
        assertThat(new BandLevels(rate).next(new short[rate / 50], 0, rate / 50))
                .containsOnly(BandLevels.QUIETEST);
    }

    private static double[] steady(double hertz, int rate) {
        short[] tone = new short[rate];
        for (int i = 0; i < rate; i++) {
            tone[i] = (short) Math.round(16384 * Math.sin(2 * Math.PI * hertz * i / rate));
        }
        BandLevels levels = new BandLevels(rate);
        levels.next(tone, 0, rate / 2);
        return levels.next(tone, rate / 2, rate);
    }
}
