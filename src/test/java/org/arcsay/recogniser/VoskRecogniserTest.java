package org.arcsay.recogniser;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.ExecutionException;
import org.arcsay.grammar.SpokenGrammar;
import org.arcsay.model.Utterance;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The real native library with the real model on real sound files. */
final class VoskRecogniserTest {
    private static final int RATE = 16_000;

    /** The marks of the visit hold some silence at the end of each utterance. */
    private static final double TIME_TOLERANCE = 0.4;

    @TempDir
    static Path cache;

    private static VoskModel model;

    @BeforeAll
    static void loadModel() throws Exception {
        ModelCache models = new ModelCache(cache);
        ModelFolder fitted =
                models.fit(models.bundled(), SpokenGrammar.standard().graph()).folder();
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
            heard = Recordings.hear(recogniser, Recordings.FOLDER.resolve("visit.wav"));
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

    private static double seconds(Duration duration) {
        return duration.toMillis() / 1000.0;
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
