package org.arcsay.app;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.arcsay.analysis.Customs;
import org.arcsay.analysis.ErrorFigure;
import org.arcsay.analysis.ErrorFigure.Confidence;
import org.arcsay.analysis.Notation;
import org.arcsay.analysis.Rater;
import org.arcsay.app.Settings.SettingsException;
import org.arcsay.feedback.FeedbackLevel;
import org.arcsay.feedback.VoiceSettings;
import org.arcsay.feedback.VoiceSettings.Voice;
import org.arcsay.model.LengthUnit;
import org.arcsay.model.Measure;
import org.arcsay.model.Mode;
import org.arcsay.model.Motion;
import org.arcsay.model.SignConvention;
import org.arcsay.review.Appearance;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class SettingsTest {
    @TempDir
    private Path folder;

    private Settings read(String... lines) throws IOException, SettingsException {
        return Settings.read(Files.write(folder.resolve("settings.properties"), List.of(lines)));
    }

    @Test
    void everyKeyIsRead() throws Exception {
        Settings settings = read(
                "# our clinic",
                "sign = minus-is-deficit   # as on our sheet",
                "unit=cm",
                "model = models/other",
                "microphone = Headset #2",
                "",
                "answers = tones",
                "pace = 1.3",
                "voice = system",
                "speaker = Desk = left");
        assertEquals(SignConvention.MINUS_IS_DEFICIT, settings.clinic().signConvention());
        assertEquals(LengthUnit.CENTIMETRE, settings.clinic().lengthUnit());
        assertEquals(Optional.of(Path.of("models/other")), settings.model());
        assertEquals(Optional.of("Headset"), settings.microphone(), "after a blank, # begins a comment");
        assertEquals(
                new VoiceSettings(FeedbackLevel.TONES, 1.3, Voice.SYSTEM, "Desk = left"),
                settings.answers().or(FeedbackLevel.SHORT));
    }

    @Test
    void theLookThatWasChosenIsKeptBesideWhatStandsInTheFile() throws Exception {
        Path file =
                Files.write(folder.resolve("settings.properties"), List.of("# our clinic", "unit = cm  # as usual"));
        new KeptAppearance(file).keep(new Appearance(true, 175));
        assertEquals(new Appearance(true, 175), Settings.read(file).appearance());
        new KeptAppearance(file).keep(new Appearance(false, 100));
        assertEquals(Appearance.USUAL, Settings.read(file).appearance());
        assertEquals(
                List.of("# our clinic", "unit = cm  # as usual"),
                Files.readAllLines(file).subList(0, 2));
    }

    @Test
    void aLookThatCannotBeKeptDisturbsNobody() throws Exception {
        Path file = Files.write(folder.resolve("settings.properties"), List.of("unit = feet"));
        new KeptAppearance(file).keep(new Appearance(true, 175));
        assertEquals(List.of("unit = feet"), Files.readAllLines(file));
    }

    @Test
    void withoutAFileOrAKeyTheDefaultsHold() throws Exception {
        assertEquals(Settings.defaults(), Settings.read(folder.resolve("none")));
        assertEquals(Settings.defaults(), read("# nothing"));
        assertEquals(VoiceSettings.defaults(), Settings.defaults().answers().or(FeedbackLevel.SHORT));
    }

    @Test
    void whatIsUsualInAClinicIsRead() throws Exception {
        Path words = Files.writeString(folder.resolve("words.txt"), "");
        Settings settings = read("plan = opposition", "norms = aaos", "keep-sound = yes", "lexicon = " + words);
        assertEquals("opposition", settings.habits().plan().id());
        assertEquals("aaos", settings.habits().customs().norms().id());
        assertTrue(settings.habits().keepSound());
        assertEquals(Optional.of(words), settings.lexicon());
        assertFalse(Settings.defaults().habits().keepSound(), "no sound is kept unless it is asked for");
    }

    @Test
    void aClinicsOwnTablesAreRead() throws Exception {
        Path error = Files.writeString(
                folder.resolve("error.tsv"),
                "measure\tmode\trater\tbasis\tamount\tunit\tmark\tsource\n"
                        + "IP:FLEXION\tany\tdifferent\tSEM\t2\tdegrees\tour default\t20 pairs of this clinic, 2026\n");
        Path norms = Files.writeString(
                folder.resolve("norms.tsv"),
                "set\ttitle\tmeasure\tmode\tmean\tsd\tlow\thigh\tunit\tsample\tmark\tsource\n"
                        + "ours\tOur own\tIP:FLEXION\tany\t78\t-\t-\t-\tdegrees\tstaff\tour default\tmeasured here\n");
        Settings settings = read(
                "norms = ours",
                "norm-file = " + norms,
                "measurement-error = " + error,
                "rater = same",
                "confidence = 90",
                "notation = neutral-zero-flexion-first");
        Customs customs = settings.habits().customs();
        assertEquals("Our own", customs.norms().title());
        assertEquals(Rater.SAME, customs.yardstick().rater());
        assertEquals(Confidence.NINETY, customs.yardstick().confidence());
        assertEquals(Notation.NEUTRAL_ZERO_FLEXION_FIRST, customs.notation());
        ErrorFigure figure = customs.yardstick()
                .error()
                .of(Measure.of("IP", Motion.FLEXION), Mode.ACTIVE, Rater.DIFFERENT)
                .orElseThrow();
        assertEquals("2", figure.sem().toPlainString());
        assertEquals("20 pairs of this clinic, 2026", figure.provenance().source());
        assertTrue(settings.habits().normSets().size()
                > Settings.defaults().habits().normSets().size());
    }

    @Test
    void aTableWithAWrongLineIsRefusedWithThatLine() throws Exception {
        Path error = Files.writeString(
                folder.resolve("error.tsv"),
                "measure\tmode\trater\tbasis\tamount\tunit\tmark\tsource\nIP:FLEXION\tany\tsame\tSEM\ttwo\tdegrees\t"
                        + "our default\tclinic\n");
        SettingsException wrong = assertThrows(SettingsException.class, () -> read("", "measurement-error = " + error));
        String message = String.valueOf(wrong.getMessage());
        assertTrue(message.contains("line 2: measurement-error") && message.contains("Line 2 of the table"), message);
        assertTrue(message.contains("'two'"), message);
    }

    private SettingsFile file(String... lines) throws IOException {
        return new SettingsFile(Files.write(folder.resolve("settings.properties"), List.of(lines)));
    }

    @Test
    void aValueIsChangedInItsLineAndCommentsStay() throws Exception {
        SettingsFile file = file("# ours", "microphone = Desk  # old", "unit = cm");
        file.set(Map.of("microphone", "Lapel #2"));
        assertEquals(
                List.of("# ours", "microphone = Lapel  # old", "unit = cm"),
                file.lines(),
                "a part of the name is enough");
        file.set(Map.of("unit", ""));
        assertEquals(List.of("# ours", "microphone = Lapel  # old", "# unit = cm"), file.lines());
        file.set(Map.of("unit", "in", "voice", "system"));
        assertEquals(List.of("# ours", "microphone = Lapel  # old", "unit = in", "voice = system"), file.lines());
        try (var left = Files.list(folder)) {
            assertEquals(List.of(file.file()), left.toList());
        }
    }

    @Test
    void aNewFileExplainsEveryKeyAndChangesNothingElse() throws Exception {
        SettingsFile file = new SettingsFile(folder.resolve("settings.properties"));
        file.set(Map.of("pace", "1.2"));
        assertEquals(1.2, Settings.read(file.file()).answers().pace());
        String text = Files.readString(file.file());
        for (String key : SettingKey.texts()) {
            assertTrue(text.contains(key + " ="), key);
        }
        file.set(Map.of("pace", ""));
        assertEquals(Settings.defaults(), Settings.read(file.file()));
    }

    @Test
    void theScreenAndTheFileAllowTheSameValues() throws Exception {
        for (SettingKey key : SettingKey.values()) {
            for (String value : key.allowed().keySet()) {
                read(key.text() + " = " + value);
            }
        }
    }

    @Test
    void aWrongValueIsNotWrittenAndItsLineIsNamed() throws Exception {
        SettingsFile file = file("# ours", "unit = cm");
        SettingsException wrong =
                assertThrows(SettingsException.class, () -> file.set(Map.of("pace", "9", "unit", "mm")));
        assertTrue(String.valueOf(wrong.getMessage()).contains("line 3: pace cannot be '9'"), wrong::getMessage);
        assertEquals(List.of("# ours", "unit = cm"), file.lines());
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = ';',
            value = {
                "answers = loud; answers cannot be 'loud'; full, off, short, tones",
                "pace = 2; pace cannot be '2'; a number from 0.7 to 1.7",
                "pace = quick; pace cannot be 'quick'; a number from 0.7 to 1.7",
                "pace = NaN; pace cannot be 'NaN'; a number from 0.7 to 1.7",
                "voice = ours; voice cannot be 'ours'; built-in, system",
                "sign = plus; sign cannot be 'plus'; ask, minus-is-deficit",
                "norms = mine; norms cannot be 'mine'; barakat-2013",
                "plan = mine; plan cannot be 'mine'; thumb-full",
                "keep-sound = 1; keep-sound cannot be '1'; no, yes",
                "grammar = none.jsgf; grammar cannot be 'none.jsgf'; no such file",
                "tempo = 1; unknown key 'tempo'; answers, pace, voice, speaker",
                "answers; expected 'key = value'; 'answers'",
            })
    void whatIsWrongIsNamedWithItsLineAndWhatIsAllowed(String line, String problem, String allowed) {
        SettingsException wrong = assertThrows(SettingsException.class, () -> read("unit = mm", "", line));
        String message = String.valueOf(wrong.getMessage());
        assertTrue(message.contains("line 3: ") && message.contains(problem) && message.contains(allowed), message);
    }

    @Test
    void theReadmeNamesEveryKey() throws Exception {
        List<String> rows = Files.readAllLines(Path.of("README.md")).stream()
                .filter(line -> line.startsWith("| `"))
                .toList();
        List<String> missing = SettingKey.texts().stream()
                .filter(key -> rows.stream().noneMatch(row -> row.contains("`" + key + "`")))
                .toList();
        assertEquals(List.of(), missing);
    }
}
