package org.arcsay.store;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTimeoutPreemptively;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import java.util.stream.Stream;
import org.arcsay.analysis.SeriesPlans;
import org.arcsay.app.Settings;
import org.arcsay.app.Settings.SettingsException;
import org.arcsay.audio.AudioException;
import org.arcsay.audio.WavSource;
import org.arcsay.grammar.GrammarException;
import org.arcsay.grammar.SpokenGrammar;
import org.arcsay.model.PatientCode;
import org.arcsay.model.Visit;
import org.arcsay.parser.Parser;
import org.arcsay.recogniser.ModelException;
import org.arcsay.recogniser.ModelFolder;
import org.arcsay.report.csv.CsvImport;
import org.arcsay.report.csv.CsvReader;
import org.arcsay.review.Draft;
import org.arcsay.review.FileDrafts;
import org.arcsay.tables.TableException;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * Feeds spoiled bytes to everything that reads a file, and random words to the parser: a message or a result, and no hang.
 *
 * <p>The figure of inputs is the system property {@code arcsay.fuzz}; 400 for each test by default.
 */
class SpoiledInputTest {
    private static final int INPUTS = Integer.getInteger("arcsay.fuzz", 400);
    private static final Duration LONGEST = Duration.ofSeconds(30);

    @TempDir
    private Path folder;

    /** Reads one input; throws its own kind of exception, with a message for people, when it is no good. */
    private interface Reader {
        void read(byte[] input) throws Exception;
    }

    private static void feed(String what, byte[] whole, Class<? extends Exception> refusal, Reader reader)
            throws IOException {
        Random random = new Random(what.hashCode());
        int[] refused = {0};
        for (int input = 0; input < INPUTS; input++) {
            byte[] spoiled = Mutation.of(whole, random);
            String which = what + " " + input;
            assertTimeoutPreemptively(
                    LONGEST,
                    () -> {
                        try {
                            reader.read(spoiled);
                        } catch (Exception e) {
                            assertEquals(refusal, e.getClass(), () -> which + ": " + e);
                            assertForPeople(e.getMessage());
                            refused[0]++;
                        }
                    },
                    which);
        }
        FaultTable.row(
                "spoiled-" + what.replaceAll("\\W+", "-"),
                "spoiled bytes to " + what,
                INPUTS,
                0,
                refused[0] + " refused with a message, " + (INPUTS - refused[0]) + " read");
    }

    private static void assertForPeople(String message) {
        assertNotNull(message);
        assertFalse(message.isBlank() || message.contains("Exception") || message.contains("java."), message);
    }

    @Test
    void recordings() throws Exception {
        byte[] whole = Files.readAllBytes(Path.of("src/test/resources/speech/flite-rms-081.wav"));
        Path file = folder.resolve("a.wav");
        feed("the reader of recordings", whole, AudioException.class, input -> {
            Files.write(file, input);
            try (WavSource source = WavSource.open(file)) {
                short[] buffer = new short[1024];
                while (source.read(buffer) >= 0) {
                    assertNotNull(source.position());
                }
            }
        });
    }

    @Test
    void grammars() throws Exception {
        byte[] whole = Files.readAllBytes(Path.of("grammar/spoken.jsgf"));
        feed("the reader of grammars", whole, GrammarException.class, input -> {
            SpokenGrammar grammar = SpokenGrammar.parse(new String(input, StandardCharsets.UTF_8));
            assertFalse(grammar.words().isEmpty());
        });
    }

    @Test
    void settings() throws Exception {
        Path file = folder.resolve("settings.properties");
        byte[] whole = "# of the clinic\nsign = minus-is-deficit\nunit = mm\nmodel = /a\nmicrophone = Desk\n"
                .getBytes(StandardCharsets.UTF_8);
        feed("the reader of settings", whole, SettingsException.class, input -> {
            Files.write(file, input);
            Settings.read(file);
        });
    }

    @Test
    void plans() throws Exception {
        byte[] whole = Files.readAllBytes(Path.of("src/main/resources/org/arcsay/tables/plans.tsv"));
        feed("the reader of plans", whole, TableException.class, input -> SeriesPlans.read(
                        "plans", new String(input, StandardCharsets.UTF_8))
                .usual());
    }

    @Test
    void imports() throws Exception {
        byte[] whole = Files.readAllBytes(Path.of("src/test/resources/golden/report.csv"));
        feed("the import of reports as CSV", whole, IllegalArgumentException.class, input -> {
            if (CsvReader.read(new ByteArrayInputStream(input)) instanceof CsvImport.Refused refused) {
                throw new IllegalArgumentException(refused.problems().get(0).sentence());
            }
        });
    }

    /** What is taken in must be in the records afterwards, event by event. */
    @Test
    void patientExports() throws Exception {
        byte[] whole;
        try (VisitStore store = VisitStore.open(folder.resolve("from.db"))) {
            Records.fill(store, 105, 12);
            whole = PatientExport.json(store, Records.PATIENT);
        }
        Path source = folder.resolve("export");
        feed("the import of patients", whole, StoreException.class, input -> {
            PatientExport export = PatientExport.parse(source, new String(input, StandardCharsets.UTF_8));
            Path file = folder.resolve("to.db");
            DurableFiles.removeDatabase(file);
            try (VisitStore store = VisitStore.open(file)) {
                store.add(source, export);
                List<Visit> visits = store.visits(new PatientCode(export.patient()));
                assertEquals(export.visits().size(), visits.size());
                for (int i = 0; i < visits.size(); i++) {
                    assertEquals(
                            export.visits().get(i).events(),
                            store.history(visits.get(i).id()));
                }
                store.integrityCheck();
            }
        });
    }

    @Test
    void drafts() throws Exception {
        Path file = folder.resolve("visit-1.json");
        FileDrafts drafts = new FileDrafts(folder);
        drafts.keep(1, List.of(Draft.empty()));
        byte[] whole = Files.readAllBytes(file);
        feed("the reader of drafts", whole, IOException.class, input -> {
            Files.write(file, input);
            drafts.load(1);
        });
    }

    @Test
    void sealedFiles() throws Exception {
        char[] password = "a long password".toCharArray();
        Path sealed = folder.resolve("sealed");
        Path opened = folder.resolve("opened");
        byte[] plain = new byte[3000];
        SealedFiles.seal(new ByteArrayInputStream(plain), sealed, Sealing.fresh(password, 1000));
        byte[] whole = Files.readAllBytes(sealed);
        feed("the opening of sealed files", whole, StoreException.class, input -> {
            Files.write(sealed, input);
            SealedFiles.unseal(sealed, opened, password);
            assertTrue(Arrays.equals(whole, input), "a spoiled file was opened");
        });
    }

    @Test
    void aSpoiledBundledModelIsAlwaysRefused() throws Exception {
        Path model = Path.of("models/en-thumb");
        List<Path> files;
        try (Stream<Path> walk = Files.walk(model)) {
            files = walk.filter(Files::isRegularFile).map(model::relativize).toList();
        }
        for (Path file : files) {
            Files.createDirectories(folder.resolve(file).getParent());
            Files.copy(model.resolve(file), folder.resolve(file));
        }
        List<Path> deciding =
                files.stream().filter(file -> !file.endsWith("phones.txt")).toList();
        ModelFolder.check(folder);
        Random random = new Random(103);
        int refused = 0;
        for (int input = 0; input < Math.max(20, INPUTS / 10); input++) {
            Path file = deciding.get(random.nextInt(deciding.size()));
            byte[] whole = Files.readAllBytes(model.resolve(file));
            byte[] spoiled = Mutation.of(whole, random);
            Files.write(folder.resolve(file), spoiled);
            if (!Arrays.equals(whole, spoiled)) {
                ModelException damage =
                        assertThrows(ModelException.class, () -> ModelFolder.check(folder), file.toString());
                assertForPeople(damage.getMessage());
                refused++;
            }
            Files.write(folder.resolve(file), whole);
        }
        FaultTable.row("spoiled-model", "spoiled speech model", refused, 0, "every one refused with a message");
    }

    @Test
    void randomWords() throws Exception {
        Parser parser = new Parser(SpokenGrammar.standard());
        List<String> words = new ArrayList<>(parser.grammar().words());
        words.addAll(List.of("[unk]", "", " ", "ÄÖÜ", "-10", "75", "null", "\u0000", "a".repeat(5000)));
        Random random = new Random(104);
        int inputs = INPUTS * 100;
        assertTimeoutPreemptively(Duration.ofMinutes(5), () -> {
            for (int input = 0; input < inputs; input++) {
                List<String> said = new ArrayList<>();
                for (int word = random.nextInt(input % 1000 == 0 ? 400 : 14); word >= 0; word--) {
                    said.add(words.get(random.nextInt(words.size())));
                }
                assertNotNull(parser.parse(said), said::toString);
            }
        });
        FaultTable.row(
                "spoiled-words", "random words to the parser", inputs, 0, "a reading, a command or \"not understood\"");
    }
}
