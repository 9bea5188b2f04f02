package org.arcsay.recogniser;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.Duration;
import java.util.List;
import java.util.Optional;
import org.arcsay.model.Utterance;
import org.arcsay.model.Utterance.Rival;
import org.arcsay.model.Word;
import org.junit.jupiter.api.Test;

/** Sound played quicker, by the facts of trade: length divided, pitch multiplied; two hearings, by the definition of a mean. */
class SecondHearingTest {
    private static final int RATE = 16_000;
    private static final Duration FROM = Duration.ofSeconds(10);

    @Test
    void quickerSoundIsShorterAndHigherInTheSameRatio() {
        short[] tone = new short[RATE];
        for (int i = 0; i < tone.length; i++) {
            tone[i] = (short) Math.round(8000 * Math.sin(2 * Math.PI * 500 * i / RATE));
        }
        short[] quicker = SecondHearing.quicker(tone);
        double seconds = (double) quicker.length / RATE;
        assertThat(seconds).isCloseTo(1 / 1.06, within(0.001));
        assertThat(risingCrossings(quicker) / seconds).isCloseTo(530, within(2.0));
    }

    private static int risingCrossings(short[] sound) {
        int crossings = 0;
        for (int i = 1; i < sound.length; i++) {
            crossings += sound[i - 1] < 0 && sound[i] >= 0 ? 1 : 0;
        }
        return crossings;
    }

    @Test
    void everyWayOfHearingHasTheMeanOfItsProbabilities() {
        Utterance first =
                heard("forty", new Rival("fourteen", 0.3), new Rival("", 0.1)).above(12);
        Utterance again = heard("forty", new Rival("fourteen", 0.1), new Rival("forty four", 0.2));
        Utterance both = SecondHearing.weighed(first, Optional.of(again), FROM);
        assertThat(both.text()).isEqualTo("forty");
        assertThat(both.signalToNoise()).isEqualTo(12);
        assertThat(both.probability()).isCloseTo(0.65, within(1e-9));
        assertThat(both.rivals()).extracting(Rival::text).containsExactly("fourteen", "forty four", "");
        assertThat(both.rivals().get(0).probability()).isCloseTo(0.2, within(1e-9));
    }

    @Test
    void theLikelierOfTheTwoIsHeardAtTheTimeWhenItWasSpoken() {
        Utterance first = heard("fourteen", new Rival("forty", 0.45));
        Utterance again = heard("forty", new Rival("fourteen", 0.1));
        Utterance both = SecondHearing.weighed(first, Optional.of(again), FROM);
        assertThat(both.text()).isEqualTo("forty");
        assertThat(both.probability()).isCloseTo((0.45 + 0.9) / 2, within(1e-9));
        assertThat(both.start()).isEqualTo(FROM.plusMillis(530));
        assertThat(both.end()).isEqualTo(FROM.plusMillis(1060));
    }

    @Test
    void ofTwoEquallyLikelyTheFirstIsHeard() {
        Utterance first = heard("fourteen", new Rival("forty", 0.2));
        Utterance again = heard("forty", new Rival("fourteen", 0.2));
        Utterance both = SecondHearing.weighed(first, Optional.of(again), FROM);
        assertThat(both.text()).isEqualTo("fourteen");
        assertThat(both.rivals()).containsExactly(new Rival("forty", 0.5));
    }

    @Test
    void silenceTheSecondTimeTakesHalfTheProbability() {
        Utterance both = SecondHearing.weighed(heard("forty", new Rival("fourteen", 0.4)), Optional.empty(), FROM);
        assertThat(both.text()).isEqualTo("forty");
        assertThat(both.probability()).isCloseTo(0.3, within(1e-9));
        assertThat(both.rivals()).contains(new Rival("", 0.5));
    }

    /** The limits are our own. */
    @Test
    void onlyWhatWasNotClearIsHeardAgain() {
        assertThat(SecondHearing.isNeeded(heard("forty").above(20))).isFalse();
        assertThat(SecondHearing.isNeeded(heard("forty").above(19.9))).isTrue();
        assertThat(SecondHearing.isNeeded(
                        heard("forty", new Rival("fourteen", 0.06)).above(40)))
                .isTrue();
    }

    private static Utterance heard(String text, Rival... rivals) {
        Word word = new Word(text, Duration.ofMillis(500), Duration.ofSeconds(1), 1);
        return new Utterance(List.of(word), List.of(rivals));
    }
}
