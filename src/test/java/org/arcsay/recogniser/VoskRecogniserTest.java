package org.arcsay.recogniser;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.ExecutionException;
import org.arcsay.grammar.Lexicon;
import org.arcsay.grammar.SpokenGrammar;
import org.arcsay.model.Utterance;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The real native library with the real model on real sound files. */
final class VoskRecogniserTest {
    private static final int RATE = 16_000;

    private static final int BLOCK = 1600;

    /** The marks of the visit hold some silence at the end of each utterance. */
    private static final double TIME_TOLERANCE = 0.4;

    @TempDir
    static Path cache;

    private static VoskModel model;

    @BeforeAll
    static void loadModel() throws Exception {
        ModelCache models = new ModelCache(cache);
        ModelFolder fitted = models.fit(
                        models.bundled(), SpokenGrammar.standard().graph(), Lexicon.EMPTY, SentencePause.LONG)
                .folder();
        model = VoskModel.load(fitted.path());
    }

    @AfterAll
    static void closeModel() {
        model.close();
    }

    @Test
    void hearsWholeVisitInOrderWithTimes() throws Exception {
        List<String> lines = Files.readAllLines(Recordings.FOLDER.resolve("visit.tsv"));
        List<Utterance> heard;
        try (Recogniser recogniser = model.recogniser(RATE)) {
            heard = Recordings.hear(recogniser, Recordings.VISIT);
        }
        List<String> expected =
                lines.stream().skip(1).map(line -> line.split("\t")[2]).toList();
        assertEquals(expected, heard.stream().map(Utterance::text).toList());
        for (int i = 0; i < heard.size(); i++) {
            String[] fields = lines.get(i + 1).split("\t");
            Utterance utterance = heard.get(i);
            assertEquals(Double.parseDouble(fields[1]), seconds(utterance.end()), TIME_TOLERANCE);
            assertTrue(seconds(utterance.start()) < Double.parseDouble(fields[0]) + TIME_TOLERANCE);
        }
    }

    /** White noise; the decibel by its definition, 20 log10 of the ratio of root mean squares (common practice). */
    @Test
    void knowsHowFarSpeechIsAboveTheNoise() throws Exception {
        double inQuiet = leastSignalToNoise(Recordings.samples(Recordings.VISIT));
        assertTrue(inQuiet > 31, () -> "in quiet " + inQuiet);
        double inNoise = leastSignalToNoise(visitInNoise());
        assertTrue(inNoise > 11 && inNoise < 30, () -> "in noise " + inNoise);
    }

    /** All of it is heard twice there; whatever the second hearing adds or loses takes half the probability. */
    @Test
    void hearsTheVisitInNoiseAtTheSameTimesAndClearly() throws Exception {
        List<Utterance> inQuiet = hear(Recordings.samples(Recordings.VISIT));
        List<Utterance> inNoise = hear(visitInNoise());
        assertEquals(
                inQuiet.stream().map(Utterance::text).toList(),
                inNoise.stream().map(Utterance::text).toList());
        for (int i = 0; i < inQuiet.size(); i++) {
            assertEquals(seconds(inQuiet.get(i).start()), seconds(inNoise.get(i).start()), 0.3);
            assertEquals(seconds(inQuiet.get(i).end()), seconds(inNoise.get(i).end()), 0.3);
            Utterance heard = inNoise.get(i);
            assertTrue(heard.probability() > 0.6, () -> heard.text() + " " + heard.rivals());
        }
    }

    private static short[] visitInNoise() throws Exception {
        short[] sound = Recordings.samples(Recordings.VISIT);
        Random random = new Random(4);
        double strength = rms(sound) / Math.pow(10, 20 / 20.0);
        for (int i = 0; i < sound.length; i++) {
            sound[i] = (short) Math.max(-32_768, Math.min(32_767, sound[i] + strength * random.nextGaussian()));
        }
        return sound;
    }

    private static double leastSignalToNoise(short[] sound) {
        return hear(sound).stream().mapToDouble(Utterance::signalToNoise).min().orElseThrow();
    }

    private static List<Utterance> hear(short[] sound) {
        try (Recogniser recogniser = model.recogniser(RATE)) {
            return Recordings.hear(recogniser, sound);
        }
    }

    private static double rms(short[] sound) {
        double squares = 0;
        for (short sample : sound) {
            squares += (double) sample * sample;
        }
        return Math.sqrt(squares / sound.length);
    }

    /** The recording says "flexion"; the model has never met "krunking", which this lexicon gives its phones. */
    @Test
    void hearsAWordThatOnlyTheClinicsLexiconHas() throws Exception {
        SpokenGrammar grammar = SpokenGrammar.parse("#JSGF V1.0; grammar clinic; public <reading> = thumb i p"
                + " (krunking | deficit) (thirty | forty | sixty) seven;");
        Lexicon own = Lexicon.parse("krunking\tF L EH K SH AH N");
        ModelCache models = new ModelCache(cache);
        ModelCache.Fitted fitted = models.fit(models.bundled(), grammar.graph(), own);
        assertEquals(List.of(), fitted.missingWords());
        assertTrue(fitted.folder().checksum().contains("+"));
        try (VoskModel adapted = VoskModel.load(fitted.folder().path());
                Recogniser recogniser = adapted.recogniser(RATE)) {
            List<String> heard =
                    Recordings.hear(recogniser, Recordings.FOLDER.resolve("espeak-en-gb-m3-141.wav")).stream()
                            .map(Utterance::text)
                            .toList();
            assertEquals(List.of("thumb i p krunking thirty seven"), heard);
        }
    }

    private static double seconds(Duration duration) {
        return duration.toMillis() / 1000.0;
    }

    /** Every pause renews the native recogniser here, and every gap is as short as an end of utterance can be. */
    @Test
    void losesNothingWhenRenewedInAnyPause() throws Exception {
        Path visit = Recordings.VISIT;
        List<Utterance> kept;
        List<Utterance> renewed;
        try (Recogniser recogniser = model.recogniser(RATE)) {
            kept = Recordings.hear(recogniser, visit);
        }
        try (Recogniser recogniser = model.recogniser(RATE, Duration.ZERO)) {
            renewed = Recordings.hear(recogniser, visit);
        }
        assertEquals(
                kept.stream().map(Utterance::text).toList(),
                renewed.stream().map(Utterance::text).toList());
        for (int i = 0; i < kept.size(); i++) {
            assertEquals(seconds(kept.get(i).end()), seconds(renewed.get(i).end()), 0.1);
        }
    }

    /** Speech that begins in the very moment in which the utterance before it is found to be over. */
    @ParameterizedTest
    @ValueSource(ints = {0, 100, 200, 300, 500})
    void hearsSpeechThatBeginsAtRenewal(int millisAfterEnd) throws Exception {
        List<Recordings.Clip> clips = Recordings.clips(Recordings.FOLDER).subList(0, 6);
        List<String> heard = new ArrayList<>();
        try (Recogniser recogniser = model.recogniser(RATE, Duration.ZERO)) {
            for (Recordings.Clip clip : clips) {
                hearUntilEnd(recogniser, clip.wav()).ifPresent(utterance -> heard.add(unitInPlural(utterance.text())));
                hearNoise(recogniser, millisAfterEnd);
            }
        }
        assertEquals(clips.stream().map(Recordings.Clip::words).toList(), heard);
    }

    /** One voice hardly says the end of this length, which means the same without it; all others are to be heard as they are said. */
    private static String unitInPlural(String words) {
        return words.replaceAll("\\bthirty seven millimeter\\b", "thirty seven millimeters");
    }

    /** Plays a clip without the silence around it, then as much faint noise as it takes to end the utterance. */
    private static Optional<Utterance> hearUntilEnd(Recogniser recogniser, Path wav) throws Exception {
        short[] speech = trimmed(Recordings.samples(wav));
        for (int from = 0; from < speech.length; from += BLOCK) {
            short[] block = Arrays.copyOfRange(speech, from, Math.min(speech.length, from + BLOCK));
            Optional<Utterance> utterance = recogniser.accept(block, block.length);
            if (utterance.isPresent()) {
                return utterance;
            }
        }
        Optional<Utterance> utterance = Optional.empty();
        for (int i = 0; i < 40 && utterance.isEmpty(); i++) {
            utterance = hearNoise(recogniser, 50);
        }
        return utterance;
    }

    private static short[] trimmed(short[] samples) {
        int first = 0;
        int last = samples.length - 1;
        while (Math.abs(samples[first]) < 300) {
            first++;
        }
        while (Math.abs(samples[last]) < 300) {
            last--;
        }
        return Arrays.copyOfRange(samples, Math.max(0, first - BLOCK), Math.min(samples.length, last + BLOCK));
    }

    private static Optional<Utterance> hearNoise(Recogniser recogniser, int millis) {
        Random random = new Random(millis);
        short[] noise = new short[RATE * millis / 1000];
        for (int i = 0; i < noise.length; i++) {
            noise[i] = (short) (random.nextInt(7) - 3);
        }
        return noise.length == 0 ? Optional.empty() : recogniser.accept(noise, noise.length);
    }

    /** Longer than the ten minutes after which the native library rebuilds itself. */
    @Test
    @Tag("slow")
    void losesNothingInTwelveMinutes() throws Exception {
        List<Utterance> heard = new ArrayList<>();
        List<String> lines = Files.readAllLines(Recordings.FOLDER.resolve("visit.tsv"));
        List<String> once =
                lines.stream().skip(1).map(line -> line.split("\t")[2]).toList();
        List<String> expected = new ArrayList<>();
        short[] visit = Recordings.samples(Recordings.VISIT);
        int rounds = (int) (Duration.ofMinutes(12).toSeconds() * RATE / visit.length) + 1;
        try (Recogniser recogniser = model.recogniser(RATE)) {
            for (int round = 0; round < rounds; round++) {
                expected.addAll(once);
                for (int from = 0; from < visit.length; from += BLOCK) {
                    short[] block = Arrays.copyOfRange(visit, from, Math.min(visit.length, from + BLOCK));
                    recogniser.accept(block, block.length).ifPresent(heard::add);
                }
            }
            recogniser.finish().ifPresent(heard::add);
        }
        assertEquals(
                expected,
                Recordings.withoutBreath(heard).stream().map(Utterance::text).toList());
    }

    @Test
    void resetForgetsOpenUtteranceButKeepsCountingTime() throws Exception {
        Recordings.Clip clip = Recordings.clips(Recordings.FOLDER).get(0);
        short[] samples = Recordings.samples(clip.wav());
        try (Recogniser recogniser = model.recogniser(RATE)) {
            recogniser.accept(samples, samples.length / 2);
            recogniser.reset();
            List<Utterance> heard = Recordings.hear(recogniser, clip.wav());
            assertEquals(
                    List.of(clip.words()), heard.stream().map(Utterance::text).toList());
            assertTrue(heard.get(0).end().toMillis() > samples.length / 2 * 1000L / RATE);
        }
    }

    @Test
    void hearsNothingInSilence() {
        try (Recogniser recogniser = model.recogniser(RATE)) {
            List<Utterance> heard = new ArrayList<>();
            hearNoise(recogniser, 300).ifPresent(heard::add);
            for (int i = 0; i < 300; i++) {
                recogniser.accept(new short[BLOCK], BLOCK).ifPresent(heard::add);
            }
            recogniser.finish().ifPresent(heard::add);
            assertEquals(List.of(), Recordings.withoutBreath(heard));
        }
    }

    /** Two seconds of exact zeros, or of white noise of one step, after each clip add no word to it. */
    @ParameterizedTest
    @ValueSource(ints = {0, 1})
    void hearsNoGhostWordInExactSilenceAfterSpeech(int step) throws Exception {
        List<String> wrong = new ArrayList<>();
        Random random = new Random(7);
        short[] silence = new short[2 * RATE];
        for (int i = 0; i < silence.length; i++) {
            silence[i] = (short) (random.nextInt(2 * step + 1) - step);
        }
        try (Recogniser recogniser = model.recogniser(RATE)) {
            for (Recordings.Clip clip : Recordings.clips(Recordings.FOLDER)) {
                List<String> heard = hearWithSilence(recogniser, trimmed(Recordings.samples(clip.wav())), silence);
                if (!unitInPlural(String.join(" ", heard)).equals(clip.words())) {
                    wrong.add(clip.wav().getFileName() + ": " + clip.words() + " -> " + heard);
                }
            }
        }
        assertEquals(List.of(), wrong);
    }

    private static List<String> hearWithSilence(Recogniser recogniser, short[] speech, short[] silence) {
        List<String> heard = new ArrayList<>();
        recogniser.accept(speech, speech.length).map(Utterance::text).ifPresent(heard::add);
        for (int from = 0; from < silence.length; from += BLOCK) {
            short[] block = Arrays.copyOfRange(silence, from, from + BLOCK);
            recogniser.accept(block, BLOCK).map(Utterance::text).ifPresent(heard::add);
        }
        recogniser.finish().map(Utterance::text).ifPresent(heard::add);
        return heard;
    }

    /** Times, words, certainties and rivals: a second run of the same sound differs in nothing. */
    @Test
    void hearsTheSameTwice() throws Exception {
        List<List<Utterance>> runs = new ArrayList<>();
        for (int run = 0; run < 2; run++) {
            try (Recogniser recogniser = model.recogniser(RATE)) {
                runs.add(Recordings.hear(recogniser, Recordings.VISIT));
            }
        }
        assertEquals(runs.get(0), runs.get(1));
    }

    @Test
    void hearsAlmostAllClips() throws Exception {
        List<String> wrong = new ArrayList<>();
        List<Recordings.Clip> clips = Recordings.clips(Recordings.FOLDER);
        try (Recogniser recogniser = model.recogniser(RATE)) {
            for (Recordings.Clip clip : clips) {
                List<String> heard = Recordings.hear(recogniser, clip.wav()).stream()
                        .map(Utterance::text)
                        .toList();
                if (!heard.equals(List.of(clip.words()))) {
                    wrong.add(clip.wav().getFileName() + ": " + clip.words() + " -> " + heard);
                }
            }
        }
        assertTrue(wrong.size() <= clips.size() / 20, wrong::toString);
    }

    @Test
    void refusesCallsFromAnotherThread() {
        try (Recogniser recogniser = model.recogniser(RATE)) {
            CompletableFuture<?> call = CompletableFuture.runAsync(() -> recogniser.accept(new short[1600], 1600));
            ExecutionException failure = assertThrows(ExecutionException.class, call::get);
            assertTrue(failure.getCause() instanceof IllegalStateException);
            assertTrue(failure.getCause().getMessage().contains("belongs to thread"));
        }
    }

    @Test
    void closesTwiceAndRefusesUseAfterwards() {
        Recogniser recogniser = model.recogniser(RATE);
        recogniser.close();
        recogniser.close();
        assertThrows(IllegalStateException.class, () -> recogniser.accept(new short[1600], 1600));
    }
}
