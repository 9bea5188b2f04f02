package org.arcsay.feedback;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;

/** Judges the tones from their samples; the numbers asked for are common practice for short interface sounds. */
class EarconTest {
    @ParameterizedTest
    @EnumSource
    void isShort(Earcon earcon) {
        assertTrue(
                earcon.sound().duration().toMillis() < 300,
                earcon + ": " + earcon.sound().duration());
        assertTrue(
                earcon.sound().duration().toMillis() >= 100,
                earcon + ": " + earcon.sound().duration());
    }

    @ParameterizedTest
    @EnumSource
    void peaksAtMinusTwelveDecibels(Earcon earcon) {
        assertEquals(-12, Listening.peakDb(earcon.sound()), 0.1);
    }

    @ParameterizedTest
    @EnumSource
    void beginsAndEndsWithoutClick(Earcon earcon) {
        Sound sound = earcon.sound();
        Sound first = sound.slice(0, Sound.RATE / 1000);
        Sound last = sound.slice(sound.length() - Sound.RATE / 1000, sound.length());
        assertTrue(Listening.peakDb(first) < -36, "first millisecond " + Listening.peakDb(first));
        assertTrue(Listening.peakDb(last) < -36, "last millisecond " + Listening.peakDb(last));
    }

    /** A sine of frequency f and peak a steps by no more than 2 pi f a / rate; overtones here at most double it. */
    @ParameterizedTest
    @EnumSource
    void hasNoJumpThatItsHighestNoteDoesNotExplain(Earcon earcon) {
        double highest = earcon.notes().stream()
                .mapToDouble(note -> Math.max(note.from(), note.to()))
                .max()
                .orElseThrow();
        double explained = 2 * Math.PI * highest / Sound.RATE * Math.pow(10, -12 / 20.0) * 2;
        assertTrue(Listening.biggestStep(earcon.sound()) < explained);
    }

    @ParameterizedTest
    @CsvSource({
        "LISTENING, 1, L",
        "SAVED, 2, SL",
        "DOUBTFUL, 3, SSS",
        "REFUSED, 2, LL",
        "UNDONE, 4, SSSS",
        "PAUSED, 2, LS"
    })
    void hasItsRhythm(Earcon earcon, int notes, String lengths) {
        assertEquals(notes, Listening.stretches(earcon.sound()).size());
        assertEquals(lengths, rhythm(earcon));
    }

    @Test
    void noTwoShareARhythm() {
        List<String> rhythms =
                List.of(Earcon.values()).stream().map(EarconTest::rhythm).toList();
        assertEquals(rhythms.size(), rhythms.stream().distinct().count(), rhythms.toString());
    }

    @ParameterizedTest
    @CsvSource({
        "LISTENING, up",
        "SAVED, up",
        "DOUBTFUL, up down",
        "REFUSED, down",
        "UNDONE, down down down",
        "PAUSED, down"
    })
    void hasItsDirection(Earcon earcon, String direction) {
        assertEquals(direction, direction(earcon));
    }

    @Test
    void savedAndRefusedDifferInRhythmAndDirection() {
        assertNotEquals(rhythm(Earcon.SAVED), rhythm(Earcon.REFUSED));
        assertNotEquals(direction(Earcon.SAVED), direction(Earcon.REFUSED));
    }

    @Test
    void canBeWrittenAsWavFiles() throws IOException {
        Path folder = Files.createDirectories(Path.of("target", "sounds"));
        for (Earcon earcon : Earcon.values()) {
            Path file = folder.resolve(earcon.name().toLowerCase() + ".wav");
            try (OutputStream out = Files.newOutputStream(file)) {
                earcon.sound().write(out);
            }
            try (var in = new java.io.BufferedInputStream(Files.newInputStream(file))) {
                assertEquals(earcon.sound().length(), Sound.read(in).length());
            }
        }
    }

    /** Long or short for each note as heard: a note is long when audible for 85 ms or, next to a shorter one, twice as long. */
    private static String rhythm(Earcon earcon) {
        List<Integer> lengths = Listening.stretches(earcon.sound()).stream()
                .map(Listening.Stretch::millis)
                .toList();
        int shortest = lengths.stream().min(Integer::compare).orElseThrow();
        return lengths.stream()
                .map(length -> length >= 85 || length >= 2 * shortest ? "L" : "S")
                .collect(Collectors.joining());
    }

    private static String direction(Earcon earcon) {
        Sound sound = earcon.sound();
        List<Listening.Stretch> notes = Listening.stretches(sound);
        double[] pitches = notes.size() == 1
                ? new double[] {
                    Listening.pitch(sound, sound.length() / 5), Listening.pitch(sound, sound.length() * 4 / 5)
                }
                : notes.stream()
                        .mapToDouble(note -> Listening.pitch(sound, (note.from() + note.to()) / 2))
                        .toArray();
        StringBuilder direction = new StringBuilder();
        for (int i = 1; i < pitches.length; i++) {
            assertTrue(Math.abs(pitches[i] / pitches[i - 1] - 1) > 0.1, earcon + " changes by less than a whole tone");
            direction.append(direction.isEmpty() ? "" : " ").append(pitches[i] > pitches[i - 1] ? "up" : "down");
        }
        return direction.toString();
    }
}
