package org.arcsay.app;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.arcsay.app.Settings.SettingsException;
import org.arcsay.feedback.FeedbackLevel;
import org.arcsay.feedback.VoiceSettings;
import org.arcsay.feedback.VoiceSettings.Voice;
import org.arcsay.model.LengthUnit;
import org.arcsay.model.SignConvention;
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
    void withoutAFileOrAKeyTheDefaultsHold() throws Exception {
        assertEquals(Settings.defaults(), Settings.read(folder.resolve("none")));
        assertEquals(Settings.defaults(), read("# nothing"));
        assertEquals(VoiceSettings.defaults(), Settings.defaults().answers().or(FeedbackLevel.SHORT));
    }

    @Test
    void aChoiceIsRememberedAndEveryOtherLineStays() throws Exception {
        Path file = folder.resolve("settings.properties");
        Settings.remember(file, "microphone", "Headset #2");
        assertEquals(List.of("microphone = Headset"), Files.readAllLines(file), "a part of the name is enough");
        Files.write(file, List.of("# ours", "microphone = Desk # old", "unit = cm"));
        Settings.remember(file, "microphone", "Lapel");
        assertEquals(List.of("# ours", "unit = cm", "microphone = Lapel"), Files.readAllLines(file));
        assertEquals(Optional.of("Lapel"), Settings.read(file).microphone());
        try (var left = Files.list(folder)) {
            assertEquals(List.of(file), left.toList());
        }
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
                "tempo = 1; unknown key 'tempo'; answers, pace, voice, speaker",
                "answers; expected 'key = value'; 'answers'",
            })
    void whatIsWrongIsNamedWithItsLineAndWhatIsAllowed(String line, String problem, String allowed) {
        SettingsException wrong = assertThrows(SettingsException.class, () -> read("unit = mm", "", line));
        String message = String.valueOf(wrong.getMessage());
        assertTrue(message.contains("line 3: ") && message.contains(problem) && message.contains(allowed), message);
    }
}
