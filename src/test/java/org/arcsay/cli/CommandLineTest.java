package org.arcsay.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.arcsay.cli.Shell.Answer;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

/** The program as its user meets it: real recordings, the real recogniser and a real records file. */
class CommandLineTest {
    private static final Path SPEECH = Path.of("src/test/resources/speech");
    private static final Path VISIT = Path.of("src/main/resources/org/arcsay/demo/visit.wav");

    @TempDir
    private Path home;

    private Answer arcsay(String... arguments) {
        return new Shell(home).arcsay(arguments);
    }

    private Answer capture(Path wav) {
        return arcsay("capture", "--patient", "T-1", "--new", "--side", "right", "--wav", wav.toString());
    }

    @Test
    void aRecordedVisitBecomesRowsFieldByField() {
        Answer captured = arcsay("demo", "--json");
        captured.mustSay(ExitCode.OK);
        assertEquals(
                List.of(
                        "1 right MP flexion active angle 52 deg unconfirmed",
                        "2 right MP extension active hyperextension 10 deg unconfirmed",
                        "3 right IP flexion active angle 68 deg unconfirmed",
                        "4 right IP extension active deficit 15 deg superseded",
                        "5 right IP extension active deficit 5 deg unconfirmed replaces 4",
                        "6 right CMC radial_abduction active angle 44 deg unconfirmed",
                        "7 right CMC palmar_abduction active angle 41 deg unconfirmed",
                        "8 right index tip opposition_gap active gap 0 mm unconfirmed",
                        "9 right middle tip opposition_gap active gap 0 mm unconfirmed",
                        "10 right ring tip opposition_gap active gap 6 mm unconfirmed",
                        "11 right little tip opposition_gap active gap 14 mm unconfirmed pain at end range",
                        "12 left MP flexion active angle 61 deg unconfirmed",
                        "13 left IP flexion active angle 80 deg unconfirmed",
                        "14 left IP extension active hyperextension 12 deg rejected",
                        "15 left IP extension active hyperextension 21 deg unconfirmed",
                        "16 left CMC radial_abduction active angle 53 deg unconfirmed",
                        "17 left CMC palmar_abduction active angle 55 deg unconfirmed"),
                rows(captured.out()));
        assertEquals(rows(captured.out()), rows(arcsay("show", "1", "--json").out()));
    }

    private static List<String> rows(String json) {
        JsonNode visit = JsonMapper.builder().build().readTree(json);
        List<String> rows = new ArrayList<>();
        for (JsonNode entry : visit.get("entries")) {
            StringBuilder row = new StringBuilder();
            for (String field : List.of("entry", "side", "site", "motion", "mode", "kind", "value", "unit", "status")) {
                row.append(row.isEmpty() ? "" : " ").append(entry.get(field).asString());
            }
            if (!entry.get("replaces").isNull()) {
                row.append(" replaces ").append(entry.get("replaces").asString());
            }
            entry.get("remarks").forEach(remark -> row.append(' ').append(remark.asString()));
            rows.add(row.toString());
        }
        return rows;
    }

    @Test
    void recordingsInNineVoicesGiveNoWrongReading() {
        Answer evaluated = arcsay("evaluate", SPEECH.toString(), "--json");
        evaluated.mustSay(ExitCode.OK);
        JsonNode total = JsonMapper.builder().build().readTree(evaluated.out()).get("total");
        assertEquals(27, total.get("recordings").asInt());
        assertEquals(0, total.get("wrong").asInt(), evaluated.out());
        assertTrue(total.get("right").asInt() >= 22, evaluated.out());
    }

    @Test
    void listShowAndPhrasesTellPeopleWhatThereIs() {
        capture(SPEECH.resolve("joe-joe-000.wav"))
                .mustSay(ExitCode.OK, "right MP flexion, active: 70 degrees", "review 1");
        arcsay("list").mustSay(ExitCode.OK, "T-1", "1 readings, 0 confirmed");
        arcsay("list", "--patient", "T-1").mustSay(ExitCode.OK, "T-1");
        arcsay("show", "1").mustSay(ExitCode.OK, "heard: thumb m p flexion seventy");
        arcsay("phrases").mustSay(ExitCode.OK, "i p flexion seventy five", "disregard that");
        arcsay("check")
                .mustSay(
                        ExitCode.OK,
                        "every sentence has one meaning",
                        "knows every word of the grammar",
                        "sound, 1 patients");
    }

    @Test
    void anUnknownPatientOrVisitIsNamedWithThoseThatAreKnown() {
        arcsay("capture", "--patient", "T-9", "--wav", VISIT.toString())
                .mustSay(ExitCode.UNKNOWN, "T-9 is not known", "--new");
        capture(SPEECH.resolve("joe-joe-000.wav")).mustSay(ExitCode.OK);
        arcsay("list", "--patient", "T-9").mustSay(ExitCode.UNKNOWN, "Known are T-1");
        arcsay("show", "77").mustSay(ExitCode.UNKNOWN, "no visit 77");
        arcsay("capture", "--patient", "Jo Doe", "--wav", VISIT.toString())
                .mustSay(ExitCode.USAGE, "not a patient code");
    }

    @Test
    void soundThatCannotBeUsedIsNamedAndNothingIsStored() throws IOException {
        Path text = Files.writeString(home.resolve("notes.wav"), "these are not samples, they are words");
        capture(text).mustSay(ExitCode.AUDIO, "notes.wav");
        Path flac = Files.write(home.resolve("visit.flac"), new byte[] {'f', 'L', 'a', 'C', 0, 0, 0, 34, 0, 0, 0, 0});
        capture(flac).mustSay(ExitCode.AUDIO, "FLAC");
        Path empty = Files.createFile(home.resolve("empty.wav"));
        capture(empty).mustSay(ExitCode.AUDIO, "empty.wav");
        capture(home.resolve("missing.wav")).mustSay(ExitCode.AUDIO, "missing.wav");
        arcsay("list").mustSay(ExitCode.UNKNOWN, "no visits yet");
    }

    @Test
    void aTruncatedRecordingKeepsWhatWasHeardBefore() throws IOException {
        byte[] whole = Files.readAllBytes(VISIT);
        Path cut = Files.write(home.resolve("cut.wav"), Arrays.copyOf(whole, whole.length / 3));
        capture(cut).mustSay(ExitCode.AUDIO, "cut.wav");
        arcsay("show", "1")
                .mustSay(ExitCode.OK, "right MP flexion, active: 52 degrees", "right IP flexion, active: 68 degrees");
    }

    @Test
    void aSilentRecordingSaysSo() throws IOException {
        byte[] silent = Files.readAllBytes(SPEECH.resolve("joe-joe-000.wav"));
        Arrays.fill(silent, 44, silent.length, (byte) 0);
        capture(Files.write(home.resolve("silent.wav"), silent))
                .mustSay(ExitCode.NO_READING, "completely silent", "No reading was understood");
    }

    @Test
    void aModelThatIsMissingDamagedOrIncompleteIsNamed() throws IOException {
        Path model = home.resolve("model");
        arcsay("check", "--model", model.toString()).mustSay(ExitCode.CHECK_FAILED, "no speech model at");
        copy(Path.of("models/en-thumb"), model);
        Files.writeString(model.resolve("am/final.mdl"), "damaged");
        arcsay("check", "--model", model.toString()).mustSay(ExitCode.CHECK_FAILED, "final.mdl");
        Files.delete(model.resolve("am/final.mdl"));
        arcsay("check", "--model", model.toString()).mustSay(ExitCode.CHECK_FAILED, "final.mdl");
    }

    @Test
    void aModelThatLacksWordsIsUsedAndTheWordsAreNamed() throws IOException {
        Path model = home.resolve("model");
        copy(Path.of("models/en-thumb"), model);
        Path words = model.resolve("graph/words.txt");
        Files.writeString(words, Files.readString(words).replaceAll("(?m)^hyperextension (\\d+)$", "otherword $1"));
        Files.deleteIfExists(model.resolve("SHA256SUMS"));
        arcsay("check", "--model", model.toString()).mustSay(ExitCode.OK, "lacks: hyperextension");
        arcsay(
                        "capture",
                        "--model",
                        model.toString(),
                        "--patient",
                        "T-1",
                        "--new",
                        "--side",
                        "right",
                        "--wav",
                        SPEECH.resolve("joe-joe-000.wav").toString())
                .mustSay(ExitCode.OK, "does not know these words", "hyperextension", "70 degrees");
    }

    private static void copy(Path from, Path to) throws IOException {
        try (var files = Files.walk(from)) {
            for (Path file : files.filter(Files::isRegularFile).toList()) {
                Path target = to.resolve(from.relativize(file).toString());
                Files.createDirectories(target.getParent());
                Files.copy(file, target);
            }
        }
    }

    @Test
    void aRecordsFileThatIsNotOursIsLeftAlone() throws IOException {
        arcsay("check").mustSay(ExitCode.OK);
        Path database = Files.writeString(home.resolve("arcsay.db"), "a shopping list, and certainly no database");
        List<Path> found;
        try (var files = Files.walk(home)) {
            found = files.filter(file -> file.endsWith("arcsay.db")).toList();
        }
        assertEquals(List.of(database), found);
        capture(VISIT).mustSay(ExitCode.RECORDS, "arcsay.db");
        assertEquals("a shopping list, and certainly no database", Files.readString(database));
    }

    @Test
    void aWrongSettingOrGrammarNamesItsLine() throws IOException {
        arcsay("check").mustSay(ExitCode.OK);
        Path settings = settingsFile();
        Files.writeString(settings, "# how minus is meant here\nsign = minus-is-deficit\nunit = miles\n");
        capture(VISIT).mustSay(ExitCode.SETTINGS, "line 3", "miles", "cm, in, mm");
        Files.writeString(settings, "colour = blue\n");
        arcsay("check").mustSay(ExitCode.CHECK_FAILED, "line 1", "colour");
        Files.writeString(settings, "pace = 1\nanswers = loud\n");
        capture(VISIT).mustSay(ExitCode.SETTINGS, "line 2", "loud", "full, off, short, tones");
        arcsay("measure").mustSay(ExitCode.SETTINGS, "line 2", "loud");
        Files.delete(settings);
        Path grammar = Files.writeString(home.resolve("own.jsgf"), "#JSGF V1.0;\ngrammar g;\npublic <u> = <v>;\n");
        arcsay("phrases", "--grammar", grammar.toString()).mustSay(ExitCode.SETTINGS, "line 3", "<v>");
    }

    @Test
    void theModelOfTheSettingsIsTheOneThatIsCheckedAndHeardWith() throws IOException {
        arcsay("check").mustSay(ExitCode.OK);
        Path missing = home.resolve("no-model-here");
        Files.writeString(settingsFile(), "model = " + missing + "\n");
        arcsay("check").mustSay(ExitCode.CHECK_FAILED, "no-model-here");
        capture(VISIT).mustSay(ExitCode.MODEL, "no-model-here");
    }

    @Test
    void answersCanBeSetForOneCaptureAndWithoutASoundOutputTheVisitGoesOn() {
        Path clip = SPEECH.resolve("flite-slt-100.wav");
        Answer answer = arcsay(
                "capture",
                "--patient",
                "T-1",
                "--new",
                "--side",
                "right",
                "--wav",
                clip.toString(),
                "--answers",
                "tones",
                "--voice",
                "system",
                "--speaker",
                "no such device");
        assertTrue(answer.err().contains("no such device") && answer.err().contains("without sound"), answer::toString);
        arcsay("capture", "--patient", "T-1", "--wav", clip.toString(), "--voice", "loud")
                .mustSay(ExitCode.USAGE, "built-in");
        arcsay("capture", "--patient", "T-1", "--wav", clip.toString(), "--pace", "9")
                .mustSay(ExitCode.USAGE, "1.7");
    }

    private Path settingsFile() {
        String line = arcsay("check")
                .out()
                .lines()
                .filter(l -> l.contains("settings"))
                .findFirst()
                .orElseThrow();
        return Path.of(line.replaceAll(".*defaults; (.*) is not there.*", "$1"));
    }

    @Test
    void aClinicsOwnGrammarChangesWhatIsUnderstoodAndNothingElseIsNeeded() throws IOException {
        String own = Files.readString(Path.of("grammar/spoken.jsgf"))
                .replace("| go ahead {act:GO_AHEAD}", "| (go ahead | carry on) {act:GO_AHEAD}");
        own = own.replace("carry on", "continue reading");
        Path grammar = Files.writeString(home.resolve("own.jsgf"), own);
        arcsay("check", "--grammar", grammar.toString())
                .mustSay(ExitCode.OK, "every sentence has one meaning", "knows every word");
    }

    @Test
    void theGrammarOfTheSettingsHoldsUnlessTheCommandNamesAnother() throws IOException {
        Path settings = settingsFile();
        Files.createDirectories(settings.getParent());
        Files.writeString(settings, "grammar = hand\n");
        arcsay("phrases").mustSay(ExitCode.OK, "Wrist", "index p i p flexion ninety five", "m p ten to fifty");
        assertFalse(arcsay("phrases", "--grammar", "thumb").out().contains("Wrist"));
        Files.writeString(settings, "grammar = no-such-file\n");
        arcsay("phrases").mustSay(ExitCode.SETTINGS, "no-such-file");
    }

    @Test
    void wrongUsageShowsHelp() {
        arcsay("capture").mustSay(ExitCode.USAGE, "--patient", "Usage");
        arcsay("captrue").mustSay(ExitCode.USAGE, "captrue");
        arcsay("capture", "--patient", "T-1", "--new", "--plan", "elbow", "--wav", VISIT.toString())
                .mustSay(ExitCode.USAGE, "elbow", "thumb-full");
    }
}
