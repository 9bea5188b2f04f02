package org.arcsay.feedback;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class ClipVoiceTest {
    private static final ClipVoice VOICE = ClipVoice.builtIn();
    private static final Sentence READING = new Sentence(List.of(List.of("i p", "flexion"), List.of("seven", "five")));

    @Test
    void everyClipIsAsLoudAsTheOthersAndDoesNotClip() {
        for (String word : VOICE.words()) {
            Sound clip = VOICE.say(Sentence.of(word), 1);
            assertEquals(-22, Listening.rmsDb(clip), 4.5, word);
            assertTrue(Listening.peakDb(clip) < -0.5, word);
        }
    }

    @Test
    void everyClipBeginsAndEndsNearSilence() {
        for (String word : VOICE.words()) {
            Sound clip = VOICE.say(Sentence.of(word), 1);
            assertTrue(Math.abs(clip.sample(0)) < 30, word);
            assertTrue(Math.abs(clip.sample(clip.length() - 1)) < 30, word);
        }
    }

    @Test
    void joinsWordsWithoutAHoleOrAClick() {
        Sound joined = VOICE.say(READING, 1);
        int apart = READING.phrases().stream()
                .flatMap(List::stream)
                .mapToInt(word -> VOICE.say(Sentence.of(word), 1).length())
                .sum();
        assertEquals(apart + Sound.RATE * 50 / 1000 - 2 * Sound.RATE * 22 / 1000, joined.length());
        double loudestWord = READING.phrases().stream()
                .flatMap(List::stream)
                .mapToDouble(word -> Listening.biggestStep(VOICE.say(Sentence.of(word), 1)))
                .max()
                .orElseThrow();
        assertTrue(Listening.biggestStep(joined) <= loudestWord * 1.01);
    }

    @ParameterizedTest
    @ValueSource(doubles = {0.7, 0.85, 1.25, 1.7})
    void changesThePaceAndKeepsTheLoudness(double rate) {
        Sound normal = VOICE.say(READING, 1);
        Sound changed = VOICE.say(READING, rate);
        assertEquals(normal.length() / rate, changed.length(), 2);
        assertEquals(Listening.rmsDb(normal), Listening.rmsDb(changed), 1);
    }

    @ParameterizedTest
    @ValueSource(doubles = {0.7, 1.7})
    void changesThePaceAndKeepsThePitch(double rate) {
        short[] tone = new short[Sound.RATE];
        for (int i = 0; i < tone.length; i++) {
            tone[i] = (short) Math.round(8000 * Math.sin(2 * Math.PI * 440 * i / Sound.RATE));
        }
        Sound changed = TimeScale.change(Sound.of(tone), rate);
        assertEquals(440, Listening.pitch(changed, changed.length() / 2), 3);
    }

    @Test
    void tonesKeepTheirPace() {
        Answer answer = Answer.of(Earcon.SAVED);
        assertEquals(VOICE.say(answer, 1).length(), VOICE.say(answer, 1.5).length());
    }

    @Test
    void refusesAWordItDoesNotKnowAndARateOutOfBounds() {
        assertThrows(IllegalArgumentException.class, () -> VOICE.say(Sentence.of("elbow"), 1));
        assertThrows(IllegalArgumentException.class, () -> VOICE.say(READING, 3));
        assertThrows(IllegalArgumentException.class, () -> new VoiceSettings(FeedbackLevel.SHORT, Double.NaN));
    }
}
