package org.arcsay.app;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.arcsay.analysis.SeriesPlan;
import org.arcsay.app.PlanFile.PlanException;
import org.arcsay.grammar.SpokenGrammar;
import org.arcsay.model.Mode;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** A clinic's own series, from text files. */
class PlanFileTest {
    @TempDir
    Path folder;

    private Path file(String... lines) throws Exception {
        return Files.write(folder.resolve("series.txt"), List.of(lines));
    }

    private List<SeriesPlan> read(String... lines) throws Exception {
        return PlanFile.read(file(lines), SpokenGrammar.standard());
    }

    @Test
    void measuresAreWrittenAsTheyAreSaid() throws Exception {
        List<SeriesPlan> plans = read(
                "# ours",
                "series tendon: After tendon repair",
                "IP flexion",
                "passive IP flexion   # with the other hand still",
                "",
                "optional IP extension",
                "series two-fingers: Opposition, two fingers",
                "opposition index",
                "opposition base of little finger",
                "radial abduction");
        assertEquals(
                List.of("tendon", "two-fingers"),
                plans.stream().map(SeriesPlan::id).toList());
        SeriesPlan tendon = plans.get(0);
        assertEquals("After tendon repair", tendon.title());
        assertEquals(
                List.of("IP:FLEXION", "IP:FLEXION", "IP:EXTENSION"),
                tendon.steps().stream().map(step -> step.measure().id()).toList());
        assertEquals(
                List.of(Mode.ACTIVE, Mode.PASSIVE, Mode.ACTIVE),
                tendon.steps().stream().map(SeriesPlan.Step::mode).toList());
        assertEquals(
                List.of(false, false, true),
                tendon.steps().stream().map(SeriesPlan.Step::optional).toList());
        assertEquals(3, plans.get(1).steps().size());
    }

    @Test
    void fingersCanBeNamedWithTheGrammarThatHasThem() throws Exception {
        Path file = file("series finger: Index", "index PIP flexion");
        assertThrows(PlanException.class, () -> PlanFile.read(file, SpokenGrammar.standard()));
        assertEquals(
                "index PIP:FLEXION",
                PlanFile.read(file, SpokenGrammar.named("hand"))
                        .get(0)
                        .steps()
                        .get(0)
                        .measure()
                        .id());
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = ';',
            value = {
                "IP flexion; line 1; must name a series",
                "series a: A/IP flexion/elbow flexion; line 3; is no measure",
                "series a: A/IP flexion/right MP flexion; line 3; without hand",
                "series a: A/IP flexion 70; line 2; is no measure",
                "series A B; line 1; should be",
                "series a: A/series b: B/IP flexion; line 2; has no measure",
                "series a: A/IP flexion/IP flexion; line 3; twice",
                "series a: A/IP flexion/series a: B/IP flexion; line 3; already",
                "series thumb-full: A/IP flexion; line 1; already",
                "series recheck: A/IP flexion; line 1; already",
                "# nothing; line 1; no series",
            })
    void whatIsWrongIsNamedWithItsLine(String lines, String line, String problem) {
        String message = String.valueOf(
                assertThrows(PlanException.class, () -> read(lines.split("/"))).getMessage());
        assertTrue(message.contains("series.txt, " + line + ": ") && message.contains(problem), message);
    }

    @Test
    void theSettingsOfferThem() throws Exception {
        Path own = file("series tendon: After tendon repair", "IP flexion");
        Path settings = Files.write(folder.resolve("settings"), List.of("plan = tendon", "plans = " + own));
        Settings.Habits habits = Settings.read(settings).habits();
        assertEquals("After tendon repair", habits.plan().title());
        assertTrue(habits.plans().contains(habits.plan()));
    }

    @Test
    void aWrongSeriesFileNamesBothLines() throws Exception {
        Path own = file("series tendon: After tendon repair", "IP flexing");
        Path settings = Files.write(folder.resolve("settings"), List.of("unit = mm", "plans = " + own));
        String message = String.valueOf(assertThrows(Settings.SettingsException.class, () -> Settings.read(settings))
                .getMessage());
        assertTrue(message.contains("settings, line 2: plans cannot be used"), message);
        assertTrue(message.contains("series.txt, line 2: 'IP flexing' is no measure"), message);
    }
}
