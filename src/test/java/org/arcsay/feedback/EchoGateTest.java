package org.arcsay.feedback;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class EchoGateTest {
    private static final int FRAME = 1024;
    private static final int ECHO_DELAY = Sound.RATE * 40 / 1000;
    private static final Answer ANSWER =
            Answer.of(Earcon.SAVED, new Sentence(List.of(List.of("radial abduction"), List.of("four", "five"))));

    private final Random random = new Random(7);
    private final List<Short> let = new ArrayList<>();
    private double reflected;
    private long now;
    private RecordingSpeaker speaker;
    private EchoGate gate;

    @BeforeEach
    void listen() {
        speaker = new RecordingSpeaker(VoiceSettings.defaults(), () -> now);
        gate = new EchoGate(speaker, Sound.RATE);
    }

    @Test
    void letsSpeechThroughUnchangedWhileNothingSounds() {
        short[] words = user();
        capture(words, 0);
        int blocks = words.length / (Sound.RATE / 50) * (Sound.RATE / 50);
        assertArrayEquals(Arrays.copyOf(words, let.size()), passed());
        assertTrue(let.size() >= blocks);
    }

    @Test
    void tellsWhetherSomebodyIsSpeakingButNotOfItsOwnVoice() {
        capture(new short[Sound.RATE], 0.3);
        assertFalse(gate.hearsSpeech());
        capture(Arrays.copyOf(user(), Sound.RATE / 2), 0.3);
        assertTrue(gate.hearsSpeech());
        capture(new short[Sound.RATE / 2], 0.3);
        assertFalse(gate.hearsSpeech());
        speaker.answer(ANSWER);
        capture(new short[Sound.RATE / 2], 0.3);
        assertTrue(speaker.sounding());
        assertFalse(gate.hearsSpeech());
    }

    @Test
    void neverLetsItsOwnVoiceThrough() {
        capture(new short[Sound.RATE], 0.3);
        for (int i = 0; i < 5; i++) {
            int before = let.size();
            speaker.answer(ANSWER);
            capture(new short[3 * Sound.RATE], 0.3);
            assertTrue(loudest(before) < 60, "echo of " + loudest(before) + " came through");
        }
        assertTrue(
                speaker.said().stream().allMatch(said -> said.sound().duration().toMillis() > 1500));
    }

    @Test
    void keepsTheNumberOfSamples() {
        speaker.answer(ANSWER);
        capture(new short[5 * Sound.RATE], 0.3);
        assertEquals(5 * Sound.RATE, let.size(), FRAME);
    }

    @Test
    void breaksOffWhenTheUserSpeaksOverIt() {
        teach(0.05);
        int before = let.size();
        speaker.answer(ANSWER);
        capture(new short[Sound.RATE / 2], 0.05);
        assertTrue(speaker.sounding());
        capture(user(), 0.05);
        assertFalse(speaker.sounding());
        long heard = speaker.said().get(1).sound().duration().toMillis();
        assertTrue(heard < 500 + 350, "went on for " + heard + " ms");
        assertTrue(loudest(before) > 3000, "the user's words did not come through");
    }

    @Test
    void aShortKnockDoesNotBreakItOff() {
        teach(0.05);
        speaker.answer(ANSWER);
        short[] knock = new short[Sound.RATE];
        for (int i = 8000; i < 8000 + Sound.RATE * 50 / 1000; i++) {
            knock[i] = (short) (random.nextGaussian() * 5000);
        }
        capture(knock, 0.05);
        assertTrue(speaker.sounding());
    }

    @Test
    void opensAgainAfterTheAnswer() {
        teach(0.3);
        int before = let.size();
        capture(user(), 0.3);
        assertTrue(loudest(before) > 3000);
    }

    /** As loud as the user, or louder, with a room that answers for a while. */
    @ParameterizedTest
    @CsvSource({"0.25, 0", "0.5, 0", "1, 0", "0.25, 0.5", "0.5, 0.5", "1, 0.5"})
    void breaksOffWhenTheUserIsNoLouderThanTheEcho(double echo, double reflected) {
        this.reflected = reflected;
        teach(echo);
        teach(echo);
        assertFalse(gate.takeLost());
        int before = let.size();
        speaker.answer(ANSWER);
        capture(new short[Sound.RATE / 2], echo);
        assertTrue(speaker.sounding());
        capture(user(), echo);
        assertFalse(speaker.sounding());
        capture(new short[Sound.RATE], echo);
        long heard = speaker.said().get(2).sound().duration().toMillis();
        assertTrue(heard < 500 + 500, "went on for " + heard + " ms");
        assertTrue(gate.takeLost() || loudest(before) > 3000, "neither heard nor told");
        assertFalse(gate.takeLost());
        before = let.size();
        capture(user(), echo);
        assertTrue(loudest(before) > 3000, "deaf afterwards");
    }

    @ParameterizedTest
    @CsvSource({"0.25, 0", "0.5, 0", "1, 0", "0.25, 0.5", "0.5, 0.5", "1, 0.5"})
    void itsOwnVoiceNeverBreaksItOff(double echo, double reflected) {
        this.reflected = reflected;
        List<Answer> answers = List.of(
                ANSWER,
                Answer.of(Earcon.DOUBTFUL, new Sentence(List.of(List.of("i p", "flexion"), List.of("nine", "nine")))),
                Answer.of(Earcon.REFUSED, Sentence.of("not understood")),
                Answer.of(Earcon.LISTENING, Sentence.of("left hand")),
                Answer.of(
                        Earcon.UNDONE,
                        new Sentence(List.of(List.of("removed"), List.of("m p", "flexion"), List.of("six", "one")))));
        for (int i = 0; i < 15; i++) {
            int before = let.size();
            speaker.answer(answers.get(i % answers.size()));
            capture(new short[3 * Sound.RATE + random.nextInt(500)], echo);
            assertTrue(loudest(before) < 60, "echo of " + loudest(before) + " came through");
            assertFalse(gate.takeLost());
        }
        VoiceSettings settings = VoiceSettings.defaults();
        assertTrue(speaker.said().stream()
                .allMatch(said -> said.sound().length()
                        == ClipVoice.builtIn()
                                .say(said.answer(), settings.rate())
                                .length()));
    }

    private void teach(double echo) {
        speaker.answer(ANSWER);
        capture(new short[3 * Sound.RATE], echo);
    }

    private void capture(short[] room, double echo) {
        for (int at = 0; at < room.length; at += FRAME) {
            short[] frame = Arrays.copyOfRange(room, at, Math.min(room.length, at + FRAME));
            for (int i = 0; i < frame.length; i++) {
                double own = echo * played(now + i);
                double sum = frame[i] + own + (echo == 0 ? 0 : random.nextGaussian() * 10);
                frame[i] = (short) Math.max(Short.MIN_VALUE, Math.min(Short.MAX_VALUE, Math.round(sum)));
            }
            now += frame.length;
            for (short sample : gate.pass(frame)) {
                let.add(sample);
            }
        }
    }

    /** The loudspeaker at the microphone: the straight way and, if there are any, reflections that fade within 0.2 s. */
    private double played(long moment) {
        double sum = sampleAt(moment - ECHO_DELAY);
        for (int i = 1; reflected > 0 && i <= 5; i++) {
            sum += reflected * Math.exp(-i / 4.0) * (i % 2 == 0 ? 1 : -1) * sampleAt(moment - ECHO_DELAY - i * 257L);
        }
        return sum;
    }

    private double sampleAt(long moment) {
        return moment < 0 ? 0 : speaker.sampleAt(moment);
    }

    private static short[] user() {
        return ClipVoice.builtIn()
                .say(new Sentence(List.of(List.of("c m c", "hyperextension"), List.of("nine", "nine"))), 1)
                .samples();
    }

    private int loudest(int from) {
        return let.subList(from, let.size()).stream().mapToInt(Math::abs).max().orElse(0);
    }

    private short[] passed() {
        short[] samples = new short[let.size()];
        for (int i = 0; i < samples.length; i++) {
            samples[i] = let.get(i);
        }
        return samples;
    }
}
