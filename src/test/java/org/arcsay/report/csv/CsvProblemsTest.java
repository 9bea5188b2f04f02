package org.arcsay.report.csv;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.StringWriter;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVPrinter;
import org.arcsay.report.content.DemoCase;
import org.arcsay.report.content.VisitScript;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class CsvProblemsTest {
    @ParameterizedTest
    @CsvSource(
            value = {
                "VALUE, -15, is not an unsigned number",
                "VALUE, '12,5', is not an unsigned number",
                "VALUE, 181, between 0 and 180",
                "VALUE, '', needs a value",
                "UNIT, mm, an angle is in deg",
                "UNIT, cm, an angle is in deg",
                "KIND, bent, must be one of angle",
                "SIDE, both, must be one of left",
                "SIDE, '', is empty",
                "JOINT, elbow, not a joint or landmark",
                "MOTION, hyperflexion, must be one of flexion",
                "MODE, '', is empty",
                "STATUS, held, but the other columns lead to",
                "TAKEN_AT, yesterday, is not a time such as",
                "CONFIRMED_AT, 25:00, is not a time such as",
                "HEARD_CONFIDENCE, 1.5, between 0 and 1",
                "HEARD_START, 3 s, is not a",
                "WAS_HELD, maybe, must be yes or no",
                "PATIENT, Jo Doe, is not a patient code",
                "VISIT, one, not a whole number",
                "ENTRY, 7, expected entry 2",
                "REPLACES, x, not a whole number",
                "REMARKS, pain:somewhere, must be one of none",
                "REMARKS, swollen, must begin with pain:",
                "FINDINGS, a|b, needs five parts",
                "CONVENTION, plus, must be one of unset"
            })
    void aWrongCellIsNamedByLineAndColumn(Column column, String cell, String expected) throws IOException {
        ImportProblem problem = problems(changed(2, column, cell)).get(0);

        assertEquals(3, problem.line());
        assertEquals(column.ordinal() + 1, problem.column());
        assertEquals(column.title(), problem.title());
        assertTrue(problem.sentence().contains(expected), problem.sentence());
    }

    @ParameterizedTest
    @CsvSource({
        "gap, unit, a length is in mm",
        "score, unit, has no unit",
        "neutral, value, nothing else is",
        "hyperextension, kind, cannot be"
    })
    void aWrongKindIsNamedWhereItClashes(String kind, String title, String expected) throws IOException {
        ImportProblem problem = problems(changed(1, Column.KIND, kind)).get(0);

        assertEquals(title, problem.title());
        assertTrue(problem.message().contains(expected), problem.message());
    }

    @Test
    void oneWrongCellKeepsEveryVisitOut() throws IOException {
        String csv = CsvRoundTripTest.csv(DemoCase.report()).replaceFirst(",82,deg", ",82,mm");

        assertInstanceOf(CsvImport.Refused.class, CsvRoundTripTest.read(csv));
    }

    @Test
    void allProblemsOfTheFileAreNamed() throws IOException {
        List<List<String>> rows = rows();
        rows.get(1).set(Column.SIDE.ordinal(), "middle");
        rows.get(2).set(Column.VALUE.ordinal(), "x");
        rows.get(2).set(Column.MODE.ordinal(), "x");

        assertEquals(
                List.of("2:side", "3:mode", "3:value"),
                problems(join(rows)).stream()
                        .map(p -> p.line() + ":" + p.title())
                        .sorted()
                        .toList());
    }

    /** The rows after it are sound, and so is their numbering. */
    @Test
    void aRowThatCannotBeReadIsTheOnlyOneThatIsNamed() throws IOException {
        String csv = CsvRoundTripTest.csv(DemoCase.report()).replaceFirst(",82,deg", ",eighty-two,deg");

        assertEquals(
                List.of("value"),
                problems(csv).stream().map(ImportProblem::title).toList());
    }

    @Test
    void aLineAfterACellWithLineBreaksKeepsItsNumber() throws IOException {
        List<List<String>> rows = rows();
        rows.get(1).set(Column.REMARKS.ordinal(), "note:one\nnote:two\nnote:three");
        rows.get(2).set(Column.SIDE.ordinal(), "middle");

        assertEquals(5, problems(join(rows)).get(0).line());
    }

    @Test
    void aMissingAndAnUnknownColumnAreNamed() throws IOException {
        List<ImportProblem> problems = problems(csv().replaceFirst("side", "hand"));

        assertEquals("line 1: the column 'side' is missing", problems.get(0).sentence());
        assertEquals("hand", problems.get(1).title());
    }

    @Test
    void columnsMayStandInAnyOrder() throws IOException {
        List<List<String>> rows = rows();
        rows.forEach(row -> Collections.swap(row, 0, 9));

        assertInstanceOf(CsvImport.Ready.class, CsvRoundTripTest.read(join(rows)));
    }

    @Test
    void aByteOrderMarkIsIgnored() throws IOException {
        assertInstanceOf(CsvImport.Ready.class, CsvRoundTripTest.read("\uFEFF" + csv()));
    }

    @Test
    void textThatIsNotUtf8IsRefused() throws IOException {
        byte[] latin = csv().replace("HT", "\u00C4").getBytes(StandardCharsets.ISO_8859_1);
        CsvImport.Refused refused =
                assertInstanceOf(CsvImport.Refused.class, CsvReader.read(new ByteArrayInputStream(latin)));

        assertTrue(refused.problems().get(0).message().contains("UTF-8"));
    }

    @Test
    void anUnclosedQuoteIsRefused() throws IOException {
        assertTrue(problems(csv() + "\"1,").get(0).message().contains("quotation marks"));
    }

    @Test
    void aRowOfAnotherWidthIsRefused() throws IOException {
        assertTrue(problems(csv() + "1,2,3\r\n").get(0).message().contains("3 cells"));
    }

    @Test
    void anEmptyFileIsRefused() throws IOException {
        assertEquals(
                "the file holds no visit",
                problems("").get(problems("").size() - 1).message());
    }

    /** Whatever stands in the file, the answer is visits or problems, never an exception. */
    @Test
    void damagedFilesNeverThrow() throws IOException {
        byte[] sound = CsvRoundTripTest.csv(DemoCase.report()).getBytes(StandardCharsets.UTF_8);
        Random random = new Random(8);
        int refused = 0;
        for (int round = 0; round < 100; round++) {
            byte[] damaged = sound.clone();
            for (int i = 0; i < 3; i++) {
                damaged[random.nextInt(damaged.length)] = (byte) random.nextInt(256);
            }
            CsvImport result = CsvReader.read(new ByteArrayInputStream(damaged));
            refused += result instanceof CsvImport.Refused ? 1 : 0;
        }
        assertTrue(refused > 50, refused + " of 100 damaged files were refused");
    }

    private static String csv() throws IOException {
        return CsvRoundTripTest.csv(
                CsvRoundTripTest.reportOf(List.of(new VisitScript(1, "demo-08", "2026-04-01T08:00:00+02:00")
                        .joint("MP", 50, 8)
                        .confirm(1)
                        .confirm(2)
                        .record())));
    }

    private static List<List<String>> rows() throws IOException {
        List<List<String>> rows = new ArrayList<>();
        try (CSVParser parser = CSVParser.parse(csv(), CSVFormat.RFC4180)) {
            parser.forEach(record -> rows.add(new ArrayList<>(record.toList())));
        }
        return rows;
    }

    private static String changed(int row, Column column, String cell) throws IOException {
        List<List<String>> rows = rows();
        rows.get(row).set(column.ordinal(), cell);
        return join(rows);
    }

    private static String join(List<List<String>> rows) throws IOException {
        StringWriter csv = new StringWriter();
        new CSVPrinter(csv, CSVFormat.RFC4180).printRecords(rows);
        return csv.toString();
    }

    private static List<ImportProblem> problems(String csv) throws IOException {
        return assertInstanceOf(CsvImport.Refused.class, CsvRoundTripTest.read(csv))
                .problems();
    }
}
