package org.arcsay.cli;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

/** Reports and imports as the user meets them, on a real records file. */
class ReportCommandTest {
    private static final Path EXPORTED = Path.of("src/test/resources/golden/report.csv");

    @TempDir
    private Path folder;

    private Shell terminal;

    @BeforeEach
    void begin() {
        terminal = new Shell(folder.resolve("home"));
    }

    private void importDemo() {
        terminal.arcsay("import", EXPORTED.toString())
                .mustSay(ExitCode.OK, "2026-03-23 10:05  demo-07       29 readings, 29 confirmed, final, was visit 4");
    }

    private String file(String name) {
        return folder.resolve(name).toString();
    }

    @Test
    void whatWasImportedIsExportedAgainToTheByte() throws IOException {
        importDemo();
        terminal.arcsay("report", "4", "-o", file("again.csv")).mustSay(ExitCode.OK, "again.csv", "health data");

        String convention = Files.readString(folder.resolve("again.csv")).replace(",unset,", ",minus_is_deficit,");
        assertEquals(Files.readString(EXPORTED), convention);
    }

    @Test
    void textGoesToStandardOutputAndNothingElseDoes() {
        importDemo();
        Shell.Answer answer = terminal.arcsay("report", "--patient", "demo-07", "--format", "text");

        answer.mustSay(ExitCode.OK, "Visit of 2026-03-23 10:05", "lacks 5 degrees", "not a certified medical device");
        assertTrue(answer.out().startsWith("Range of motion, patient demo-07"), answer.out());
        assertEquals("", answer.err());
    }

    @Test
    void theNameOfTheFileChoosesTheFormatAndPaperIsAsAsked() throws IOException {
        importDemo();
        terminal.arcsay("report", "4", "-o", file("visit.fhir.json")).mustSay(ExitCode.OK);
        terminal.arcsay("report", "4", "-o", file("visit.json")).mustSay(ExitCode.OK);
        terminal.arcsay("report", "4", "-o", file("visit"), "--paper", "letter").mustSay(ExitCode.OK);

        assertEquals("Bundle", json("visit.fhir.json").get("resourceType").asString());
        assertEquals("arcsay-report", json("visit.json").get("format").asString());
        try (PDDocument pdf = Loader.loadPDF(folder.resolve("visit").toFile())) {
            assertEquals(612, Math.round(pdf.getPage(0).getMediaBox().getWidth()));
        }
    }

    @Test
    void aFileThatIsThereIsOnlyReplacedWhenAsked() throws IOException {
        importDemo();
        byte[] letter = "a letter that nobody else has".getBytes(StandardCharsets.UTF_8);
        Files.write(folder.resolve("visit.pdf"), letter);

        terminal.arcsay("report", "4", "-o", file("visit.pdf"))
                .mustSay(ExitCode.USAGE, "visit.pdf already", "left as it is", "--replace");
        assertArrayEquals(letter, Files.readAllBytes(folder.resolve("visit.pdf")));

        terminal.arcsay("report", "4", "-o", file("visit.pdf"), "--replace").mustSay(ExitCode.OK);
        assertTrue(Files.readString(folder.resolve("visit.pdf"), StandardCharsets.ISO_8859_1)
                .startsWith("%PDF-"));
    }

    @Test
    void whatCannotBeWrittenIsSaidAndLeavesNothing() throws IOException {
        importDemo();
        Path inTheWay = Files.createFile(folder.resolve("plain"));

        terminal.arcsay("report", "4", "-o", inTheWay.resolve("visit.pdf").toString())
                .mustSay(ExitCode.RECORDS, "visit.pdf");
        terminal.arcsay("report", "4", "-o", folder.toString()).mustSay(ExitCode.USAGE, "is a folder");
        terminal.arcsay("report", "4", "-o", "-").mustSay(ExitCode.USAGE, "name a file");
        try (var files = Files.list(folder)) {
            assertEquals(
                    List.of("home", "plain"),
                    files.map(f -> f.getFileName().toString()).sorted().toList());
        }
    }

    @Test
    void aReportOfAnUnconfirmedVisitSaysSo() throws IOException {
        Files.writeString(
                folder.resolve("open.csv"),
                Files.readString(EXPORTED)
                        .lines()
                        .limit(2)
                        .map(line ->
                                line.replace("confirmed,,no,,,,2026-01-12T09:31:50+01:00,HT", "unconfirmed,,no,,,,,"))
                        .reduce("", (text, line) -> text + line + "\r\n"));
        terminal.arcsay("import", file("open.csv")).mustSay(ExitCode.OK, "1 readings, 0 confirmed");

        terminal.arcsay("report", "1", "--format", "text")
                .mustSay(ExitCode.OK, "preliminary", "1 of 1 readings are not confirmed", "arcsay review 1");
    }

    @Test
    void wrongUsageIsExplained() {
        importDemo();
        terminal.arcsay("report").mustSay(ExitCode.USAGE, "VISIT", "--patient");
        terminal.arcsay("report", "4", "--patient", "demo-07").mustSay(ExitCode.USAGE, "mutually exclusive");
        terminal.arcsay("report", "4", "--format", "doc").mustSay(ExitCode.USAGE, "doc", "PDF");
        terminal.arcsay("report", "4", "--norms", "mine").mustSay(ExitCode.USAGE, "mine", "barakat-2013");
        terminal.arcsay("report", "9").mustSay(ExitCode.UNKNOWN, "no visit 9");
        terminal.arcsay("report", "--patient", "T-9").mustSay(ExitCode.UNKNOWN, "Known are demo-07");
        terminal.arcsay("report", "4", "--format", "fhir", "--codes", file("none.tsv"))
                .mustSay(ExitCode.SETTINGS, "none.tsv");
    }

    @Test
    void everyProblemOfAFileIsNamedAndNothingOfItIsStored() throws IOException {
        String broken = Files.readString(EXPORTED)
                .replaceFirst(",angle,58,deg,", ",angle,fifty-eight,deg,")
                .replaceFirst(",hyperextension,45,deg,", ",hyperextension,45,mm,");
        Files.writeString(folder.resolve("broken.csv"), broken);

        terminal.arcsay("import", file("broken.csv"))
                .mustSay(
                        ExitCode.IMPORT,
                        "line 2, column 12 (value)",
                        "line 5, column 13 (unit): unit is 'mm', but an angle is in deg",
                        "nothing was stored");
        terminal.arcsay("list").mustSay(ExitCode.UNKNOWN, "no visits yet");
        terminal.arcsay("import", file("none.csv")).mustSay(ExitCode.IMPORT, "none.csv", "cannot be read");
    }

    @Test
    void theSameFileIsNotImportedTwice() {
        terminal.arcsay("import", EXPORTED.toString(), "--dry-run")
                .mustSay(ExitCode.OK, "demo-07", "Nothing was stored");
        importDemo();
        terminal.arcsay("import", EXPORTED.toString())
                .mustSay(ExitCode.RECORDS, "Visit 1 of patient demo-07", "already");

        assertEquals(4, terminal.arcsay("list").out().lines().count());
    }

    @Test
    void otherProgramsGetJson() {
        importDemo();
        JsonNode written = JsonMapper.builder()
                .build()
                .readTree(terminal.arcsay("report", "4", "-o", file("visit.pdf"), "--json")
                        .out());
        assertEquals("amended", written.get("standing").asString());
        assertFalse(written.get("file").asString().isEmpty());
    }

    private JsonNode json(String name) throws IOException {
        return JsonMapper.builder().build().readTree(Files.readString(folder.resolve(name)));
    }
}
