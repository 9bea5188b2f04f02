package org.arcsay.feedback;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertSame;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.Semaphore;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

@Timeout(30)
class SpeakersTest {
    private static final Answer READING =
            Answer.of(Earcon.SAVED, new Sentence(List.of(List.of("i p", "flexion"), List.of("seven", "five"))));

    @Test
    void playsToneAndWordsToTheEnd() throws InterruptedException {
        HandCranked output = new HandCranked();
        CountDownLatch started = new CountDownLatch(1);
        try (LineSpeaker speaker =
                new LineSpeaker(VoiceSettings.defaults(), output, (answer, time) -> started.countDown())) {
            speaker.answer(READING);
            assertTrue(speaker.sounding());
            output.turns.release(1000);
            output.drained.await();
            assertTrue(started.await(5, TimeUnit.SECONDS));
            assertArrayEquals(ClipVoice.builtIn().say(READING, 1).samples(), output.played());
        }
    }

    @Test
    void breaksOffAtOnce() throws InterruptedException {
        HandCranked output = new HandCranked();
        try (LineSpeaker speaker = new LineSpeaker(VoiceSettings.defaults(), output, (answer, time) -> {})) {
            speaker.answer(READING);
            output.turns.release(5);
            output.written.acquire(5);
            speaker.stop();
            output.turns.release(1000);
            while (speaker.sounding()) {
                Thread.onSpinWait();
            }
            assertTrue(output.played().length <= 6 * 320, "went on for " + output.played().length + " samples");
            assertTrue(output.flushes > 0);
        }
    }

    @Test
    void aNewAnswerReplacesTheOneThatSounds() throws InterruptedException {
        HandCranked output = new HandCranked();
        try (LineSpeaker speaker = new LineSpeaker(VoiceSettings.defaults(), output, (answer, time) -> {})) {
            speaker.answer(READING);
            output.turns.release(3);
            output.written.acquire(3);
            speaker.answer(Answer.of(Earcon.UNDONE));
            output.turns.release(1000);
            output.drained.await();
            assertTrue(output.played().length <= 4 * 320 + Earcon.UNDONE.sound().length());
        }
    }

    @Test
    void levelsDecideWhatSounds() {
        assertTrue(READING.at(FeedbackLevel.OFF).isSilent());
        assertEquals(Answer.of(Earcon.SAVED), READING.at(FeedbackLevel.TONES));
        assertEquals(READING, READING.at(FeedbackLevel.SHORT));
        assertEquals(READING, READING.at(FeedbackLevel.FULL));
    }

    @Test
    void aRecordingKeepsOnlyWhatWasHeard() {
        long[] now = {16_000};
        RecordingSpeaker speaker = new RecordingSpeaker(VoiceSettings.defaults(), () -> now[0]);
        speaker.answer(READING);
        now[0] += 3200;
        assertTrue(speaker.sounding());
        speaker.stop();
        assertFalse(speaker.sounding());
        now[0] += 8000;
        assertEquals(3200, speaker.said().get(0).sound().length());
        Sound track = speaker.track();
        assertEquals(27_200, track.length());
        assertEquals(0, track.sample(15_999));
        assertEquals(Earcon.SAVED.sound().sample(500), track.sample(16_500));
        assertEquals(track.sample(16_500), speaker.sampleAt(16_500));
        assertEquals(0, speaker.sampleAt(19_300));
    }

    @Test
    void theSystemVoiceGetsTheSentenceAsOneArgumentAndNoShell(@TempDir Path folder) throws Exception {
        Path said = folder.resolve("said.txt");
        RecordingSpeaker tones = new RecordingSpeaker(VoiceSettings.defaults(), () -> 0);
        try (SystemVoice voice = new SystemVoice(tones, FeedbackLevel.SHORT, program(said))) {
            voice.answer(READING);
            assertTrue(voice.sounding());
            while (!Files.exists(said) || Files.size(said) == 0) {
                Thread.sleep(20);
            }
            assertEquals(List.of("i p flexion, seven five"), Files.readAllLines(said));
            assertEquals(
                    List.of(Answer.of(Earcon.SAVED)),
                    tones.said().stream().map(RecordingSpeaker.Said::answer).toList());
            voice.stop();
            assertFalse(voice.sounding() && !tones.sounding());
        }
    }

    @Test
    void theBuiltInVoiceStepsInWhenTheSystemVoiceFails(@TempDir Path folder) throws InterruptedException {
        SpeechProgram missing =
                new SpeechProgram(List.of(folder.resolve("nothing here").toString()), List.of());
        long[] now = {0};
        RecordingSpeaker tones = new RecordingSpeaker(VoiceSettings.defaults(), () -> now[0]);
        try (SystemVoice voice = new SystemVoice(tones, FeedbackLevel.SHORT, missing)) {
            voice.answer(READING);
            now[0] += 100_000;
            while (tones.said().size() < 2) {
                Thread.sleep(20);
            }
            assertEquals(READING.sentence(), tones.said().get(1).answer().sentence());
        }
    }

    @Test
    void findsTheFirstInstalledSpeechProgram() {
        assertEquals(
                Optional.of("espeak-ng"),
                SpeechProgram.find(1.2, "espeak-ng"::equals)
                        .map(found -> found.speak().get(0)));
        assertEquals(
                List.of("espeak-ng", "-s", "210", "--"),
                SpeechProgram.find(1.2, "espeak-ng"::equals).orElseThrow().speak());
        assertEquals(Optional.empty(), SpeechProgram.find(1, name -> false));
    }

    @Test
    void theSettingsDecideWhoseVoiceAnswers() {
        VoiceSettings wanted = new VoiceSettings(FeedbackLevel.SHORT, 1, VoiceSettings.Voice.SYSTEM, "");
        Speaker builtIn = new RecordingSpeaker(wanted, () -> 0);
        OpenedSpeaker system =
                OpenedSpeaker.system(builtIn, wanted, Optional.of(new SpeechProgram(List.of("speak"), List.of())));
        assertInstanceOf(SystemVoice.class, system.speaker());
        assertEquals(Optional.empty(), system.notice());
        OpenedSpeaker none = OpenedSpeaker.system(builtIn, wanted, Optional.empty());
        assertSame(builtIn, none.speaker());
        assertTrue(none.notice().orElse("").contains("built-in voice answers"), none::toString);
    }

    @Test
    void aVisitGoesOnWithoutSoundWhenThereIsNoOutput() {
        OpenedSpeaker opened = OpenedSpeaker.open(
                new VoiceSettings(FeedbackLevel.SHORT, 1, VoiceSettings.Voice.BUILT_IN, "no such device"));
        assertInstanceOf(NoSpeaker.class, opened.speaker());
        assertTrue(opened.notice().orElse("").endsWith("Going on without sound."), opened::toString);
        OpenedSpeaker off = OpenedSpeaker.open(new VoiceSettings(FeedbackLevel.OFF, 1));
        assertEquals(Optional.empty(), off.notice());
    }

    @Test
    void aMissingDeviceIsNamedWithWhatToDo() {
        String message = "";
        try {
            LineSpeaker.open(
                            new VoiceSettings(FeedbackLevel.SHORT, 1, VoiceSettings.Voice.BUILT_IN, "no such device"),
                            (answer, time) -> {})
                    .close();
        } catch (SpeakerException e) {
            message = e.getMessage();
        }
        assertTrue(message.contains("no such device") && message.contains("Connect"), message);
    }

    private static SpeechProgram program(Path file) {
        String java = Path.of(System.getProperty("java.home"), "bin", "java").toString();
        String classes = Path.of("target", "test-classes").toAbsolutePath().toString();
        return new SpeechProgram(
                List.of(java, "-cp", classes, TalkingProgram.class.getName(), file.toString()), List.of());
    }

    /** Stands for a speech program: writes down its arguments and goes on "speaking" until it is ended. */
    static final class TalkingProgram {
        public static void main(String[] args) throws IOException, InterruptedException {
            Files.write(Path.of(args[0]), List.of(args).subList(1, args.length));
            Thread.sleep(20_000);
        }
    }

    /** A sound device that takes one chunk for each turn it is given. */
    private static final class HandCranked implements PcmOutput {
        private final Semaphore turns = new Semaphore(0);
        private final Semaphore written = new Semaphore(0);
        private final CountDownLatch drained = new CountDownLatch(1);
        private final List<Sound> chunks = new ArrayList<>();
        private volatile int flushes;

        @Override
        public void write(Sound sound) {
            turns.acquireUninterruptibly();
            synchronized (chunks) {
                chunks.add(sound);
            }
            written.release();
        }

        @Override
        public void drain() {
            drained.countDown();
        }

        @Override
        public void flush() {
            flushes++;
        }

        @Override
        public void close() {}

        short[] played() {
            synchronized (chunks) {
                return Sound.sequence(List.copyOf(chunks)).samples();
            }
        }
    }
}
