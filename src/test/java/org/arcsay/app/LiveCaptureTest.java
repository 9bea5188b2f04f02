package org.arcsay.app;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.arcsay.audio.SimulatedMicrophone;
import org.arcsay.audio.WavSource;
import org.arcsay.audio.Wavs;
import org.arcsay.feedback.RecordingSpeaker;
import org.arcsay.feedback.Sound;
import org.arcsay.grammar.SpokenGrammar;
import org.arcsay.recogniser.Recogniser;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** From spoken sound to stored entries and sounding answers, through the code that a microphone feeds. */
class LiveCaptureTest {
    private static final List<String> SERIES = List.of(
            "right MP flexion, active: 52 degrees",
            "right MP extension, active: hyperextends 10 degrees",
            "right IP flexion, active: 68 degrees",
            "right IP extension, active: lacks 5 degrees",
            "right CMC radial abduction, active: 44 degrees",
            "right CMC palmar abduction, active: 41 degrees",
            "right opposition to index tip, active: touches, 0 mm",
            "right opposition to middle tip, active: touches, 0 mm",
            "right opposition to ring tip, active: 6 mm",
            "right opposition to little tip, active: 12 mm",
            "right opposition to little base, active: 20 mm",
            "left MP flexion, active: 61 degrees",
            "left IP flexion, active: 70 degrees");

    private static final List<String> ANSWERS = List.of(
            "LISTENING listening",
            "LISTENING listening",
            "LISTENING right hand, active",
            "SAVED right, active, m p flexion, five two",
            "SAVED m p hyperextension, one zero",
            "SAVED i p flexion, six eight",
            "SAVED i p lacks, one five",
            "SAVED corrected, i p lacks, five",
            "SAVED radial abduction, four four",
            "DOUBTFUL palmar abduction, nine zero, or, one nine, please confirm",
            "SAVED corrected, palmar abduction, four one",
            "REFUSED ",
            "SAVED index tip, touches",
            "SAVED middle tip, touches",
            "SAVED ring tip, six millimeters",
            "SAVED little tip, one four millimeters",
            "SAVED corrected, little tip, one two millimeters",
            "SAVED base of little, two zero millimeters",
            "LISTENING left hand, active",
            "SAVED left, m p flexion, six one",
            "SAVED i p flexion, eight zero",
            "UNDONE removed, i p flexion, eight zero",
            "SAVED i p flexion, seven zero",
            "PAUSED session ended");

    @TempDir
    private Path folder;

    @Test
    void aWholeSeriesIsStoredAndAnsweredWithoutATouch() throws Exception {
        SimulatedMicrophone script =
                new SimulatedMicrophone().speed(Double.POSITIVE_INFINITY).pause(Duration.ofSeconds(2));
        for (Rehearsal.Line line : Rehearsal.script()) {
            script.play(line.wav()).pause(Duration.ofSeconds(6));
        }
        List<String> heard = new ArrayList<>();
        try (Rehearsal rehearsal = new Rehearsal(folder);
                Room room = new Room(script.open(), 0.25)) {
            rehearsal.run(room, room.speaker(), (utterance, command, outcome) -> heard.add(utterance.text()));
            keep(room.speaker().track());
            assertEquals(
                    ANSWERS,
                    room.speaker().said().stream().map(LiveCaptureTest::text).toList(),
                    heard::toString);
            assertEquals(
                    SERIES.stream().sorted().toList(),
                    rehearsal.stored().stream().sorted().toList());
        }
    }

    @ParameterizedTest
    @ValueSource(ints = {1300, 1600, 2000, 2600})
    void theUsersVoiceBreaksOffAnAnswer(int pause) throws Exception {
        List<Rehearsal.Line> lines = Rehearsal.script();
        SimulatedMicrophone script = new SimulatedMicrophone()
                .speed(Double.POSITIVE_INFINITY)
                .pause(Duration.ofSeconds(2))
                .play(lines.get(1).wav())
                .pause(Duration.ofSeconds(4))
                .play(lines.get(8).wav())
                .pause(Duration.ofMillis(pause))
                .play(lines.get(9).wav())
                .pause(Duration.ofSeconds(4));
        try (Rehearsal rehearsal = new Rehearsal(folder);
                Room room = new Room(script.open(), 0.1)) {
            rehearsal.run(room, room.speaker(), (utterance, command, outcome) -> {});
            RecordingSpeaker.Said question = room.speaker().said().get(2);
            assertTrue(text(question).contains("palmar abduction, nine zero"), text(question));
            assertTrue(
                    question.sound().duration().toMillis() < pause,
                    "went on for " + question.sound().duration());
            assertEquals(List.of("right CMC palmar abduction, active: 41 degrees"), rehearsal.stored());
        }
    }

    /** A loudspeaker as loud at the microphone as the user: what was said over the answer is not heard in part, but asked for. */
    @ParameterizedTest
    @ValueSource(doubles = {0.25, 0.5, 1})
    void whatIsSaidOverALoudAnswerEndsItAndIsAskedForAgain(double echo) throws Exception {
        List<Rehearsal.Line> lines = Rehearsal.script();
        SimulatedMicrophone script = new SimulatedMicrophone()
                .speed(Double.POSITIVE_INFINITY)
                .pause(Duration.ofSeconds(2))
                .play(lines.get(1).wav())
                .pause(Duration.ofSeconds(4))
                .play(lines.get(8).wav())
                .pause(Duration.ofMillis(1300))
                .play(lines.get(9).wav())
                .pause(Duration.ofSeconds(8))
                .play(lines.get(9).wav())
                .pause(Duration.ofSeconds(4));
        try (Rehearsal rehearsal = new Rehearsal(folder);
                Room room = new Room(script.open(), echo)) {
            List<String> heard = new ArrayList<>();
            rehearsal.run(room, room.speaker(), (utterance, command, outcome) -> heard.add(utterance.text()));
            List<String> said =
                    room.speaker().said().stream().map(LiveCaptureTest::text).toList();
            assertEquals(List.of("no forty one"), heard.subList(heard.size() - 1, heard.size()), said::toString);
            assertTrue(said.get(3).startsWith("REFUSED not understood"), said.get(3));
            assertTrue(said.get(3).endsWith("palmar abduction, nine zero, or, one nine, please confirm"), said.get(3));
            assertTrue(room.speaker().said().get(2).sound().duration().toMillis() < 2200, said::toString);
            assertEquals(3, heard.size(), heard::toString);
            assertEquals(List.of("right CMC palmar abduction, active: 41 degrees"), rehearsal.stored());
        }
    }

    /** Cut where the recogniser hears the border of "fifty" and "two". */
    @ParameterizedTest
    @ValueSource(ints = {400, 800})
    void aPauseInsideANumberIsHeardThroughAndOnlyTheWholeStands(int pause) throws Exception {
        List<Rehearsal.Line> lines = Rehearsal.script();
        short[] whole = samples(lines.get(2).wav());
        int border = border(whole, "two");
        Path first = Wavs.write(folder.resolve("first.wav"), Arrays.copyOf(whole, border));
        Path second = Wavs.write(folder.resolve("second.wav"), Arrays.copyOfRange(whole, border, whole.length));
        SimulatedMicrophone script = new SimulatedMicrophone()
                .speed(Double.POSITIVE_INFINITY)
                .pause(Duration.ofSeconds(2))
                .play(lines.get(1).wav())
                .pause(Duration.ofSeconds(4))
                .play(first)
                .pause(Duration.ofMillis(pause))
                .play(second)
                .pause(Duration.ofSeconds(5));
        try (Rehearsal rehearsal = new Rehearsal(folder);
                Room room = new Room(script.open(), 0.1)) {
            rehearsal.run(room, room.speaker(), (utterance, command, outcome) -> {});
            assertEquals(List.of("right MP flexion, active: 52 degrees"), rehearsal.stored());
            List<RecordingSpeaker.Said> said = room.speaker().said();
            assertTrue(text(said.get(said.size() - 1)).contains("m p flexion, five two"), said::toString);
        }
    }

    private static short[] samples(Path wav) throws Exception {
        try (WavSource source = WavSource.open(wav)) {
            short[] all = new short[10 * source.sampleRate()];
            int length = source.read(all);
            return Arrays.copyOf(all, length);
        }
    }

    private int border(short[] samples, String before) throws Exception {
        try (Ears ears = Ears.open(folder.resolve("models"), Optional.empty(), SpokenGrammar.standard());
                Recogniser recogniser = ears.recogniser(16_000)) {
            recogniser.accept(samples, samples.length);
            return recogniser.finish().orElseThrow().words().stream()
                    .filter(word -> word.text().equals(before))
                    .mapToInt(word -> (int) (word.start().toMillis() * 16))
                    .findFirst()
                    .orElseThrow();
        }
    }

    private static String text(RecordingSpeaker.Said said) {
        return said.answer().earcon().map(Enum::name).orElse("") + " "
                + said.answer().sentence().text();
    }

    private static void keep(Sound track) throws Exception {
        assertTrue(track.duration().compareTo(Duration.ofSeconds(60)) > 0);
        Path file = Files.createDirectories(Path.of("target", "sounds")).resolve("answers.wav");
        try (OutputStream out = Files.newOutputStream(file)) {
            track.write(out);
        }
    }
}
