package org.arcsay.recogniser;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import org.junit.jupiter.api.Test;

class FollowingNoiseTest {
    private static final int RATE = 16000;
    private static final int STEP = RATE / 100;
    private static final int HELD_BACK = FollowingNoise.LOOK_AHEAD * STEP;

    private final FollowingNoise noise = new FollowingNoise(RATE);

    @Test
    void leavesSilenceAloneAndHandsOnEverySample() {
        short[] silence = new short[12345];

        short[] ready = noise.under(silence, silence.length);
        short[] rest = noise.rest();

        assertThat(ready.length + rest.length).isEqualTo(12345);
        assertThat(rest.length).isBetween(HELD_BACK, HELD_BACK + STEP);
        assertThat(ready).containsOnly((short) 0);
        assertThat(rest).containsOnly((short) 0);
    }

    @Test
    void beginsBeforeTheSoundAndIsFortyDecibelsBelowIt() {
        short[] sound = new short[2 * RATE];
        Arrays.fill(sound, RATE, 2 * RATE, (short) 1000);

        short[] ready = noise.under(sound, sound.length);

        assertThat(strength(ready, 0, RATE - HELD_BACK, 0)).isZero();
        assertThat(strength(ready, RATE - HELD_BACK, RATE, 0)).isCloseTo(10, within(1.5));
        assertThat(strength(ready, RATE, ready.length, 1000)).isCloseTo(10, within(0.3));
    }

    @Test
    void isNoStrongerAfterAKnockThanTheStrongest() {
        short[] knock = new short[RATE];
        Arrays.fill(knock, 0, STEP, Short.MAX_VALUE);

        short[] ready = noise.under(knock, knock.length);

        assertThat(strength(ready, STEP, RATE / 2, 0)).isCloseTo(FollowingNoise.STRONGEST, within(1.5));
    }

    @Test
    void fadesByAboutFourDecibelsASecond() {
        short[] sound = new short[3 * RATE];
        Arrays.fill(sound, 0, STEP, (short) 2000);

        short[] ready = noise.under(sound, sound.length);

        double decibels = 20
                * Math.log10(
                        strength(ready, RATE, RATE + RATE / 2, 0) / strength(ready, 2 * RATE, 2 * RATE + RATE / 2, 0));
        assertThat(decibels).isCloseTo(4.4, within(0.5));
    }

    @Test
    void isTheSameHoweverTheSoundIsCutIntoPieces() {
        short[] sound = new short[RATE];
        Arrays.fill(sound, STEP, RATE, (short) 700);
        FollowingNoise inPieces = new FollowingNoise(RATE);

        short[] whole = noise.under(sound, sound.length);
        short[] first = inPieces.under(sound, 777);
        short[] second = inPieces.under(Arrays.copyOfRange(sound, 777, RATE), RATE - 777);

        short[] joined = Arrays.copyOf(first, first.length + second.length);
        System.arraycopy(second, 0, joined, first.length, second.length);
        assertThat(joined).isEqualTo(whole);
    }

    /** Root mean square of the difference from a constant sound. */
    private static double strength(short[] samples, int from, int to, int sound) {
        double sum = 0;
        for (int i = from; i < to; i++) {
            sum += Math.pow(samples[i] - sound, 2);
        }
        return Math.sqrt(sum / (to - from));
    }
}
