package org.arcsay.report.csv;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import org.arcsay.model.JournalEvent;
import org.arcsay.model.Measure;
import org.arcsay.model.Motion;
import org.arcsay.model.Remark;
import org.arcsay.model.Value.Angle;
import org.arcsay.model.Visit;
import org.arcsay.report.content.DemoCase;
import org.arcsay.report.content.Golden;
import org.arcsay.report.content.Report;
import org.arcsay.report.content.VisitRecord;
import org.arcsay.report.content.VisitScript;
import org.arcsay.report.content.Written;
import org.junit.jupiter.api.Test;

class CsvRoundTripTest {
    @Test
    void theDemoCaseReadsAsBefore() {
        Golden.assertText("report.csv", Written.bytes(new CsvWriter(), DemoCase.report()));
    }

    @Test
    void theSameVisitsComeBack() throws IOException {
        List<ImportedVisit> imported = ready(csv(DemoCase.report()));

        assertEquals(
                DemoCase.visits().stream().map(VisitRecord::visit).toList(),
                imported.stream().map(ImportedVisit::visit).toList());
    }

    @Test
    void whoDecidedWhatAndWhyComesBack() throws IOException {
        List<ImportedVisit> imported = ready(csv(DemoCase.report()));

        for (int i = 0; i < imported.size(); i++) {
            VisitRecord before = DemoCase.visits().get(i);
            VisitRecord after = new VisitRecord(
                    imported.get(i).visit(), imported.get(i).content().journal());
            before.visit().entries().forEach(entry -> assertEquals(before.trail(entry), after.trail(entry)));
            before.visit().entries().forEach(entry -> assertEquals(before.standing(entry), after.standing(entry)));
        }
    }

    @Test
    void exportingAgainGivesTheSameBytes() throws IOException {
        String first = csv(DemoCase.report());
        List<VisitRecord> visits = ready(first).stream()
                .map(v -> new VisitRecord(v.visit(), v.content().journal()))
                .toList();

        assertEquals(first, csv(reportOf(visits)));
    }

    @Test
    void theNameOfTheSeriesComesBack() throws IOException {
        List<VisitRecord> visits = DemoCase.visits().stream()
                .map(visit -> visit.following("thumb-short"))
                .toList();

        List<ImportedVisit> imported = ready(csv(reportOf(visits)));

        imported.forEach(visit -> assertEquals("thumb-short", visit.content().plan()));
    }

    @Test
    void aFileOfAnEarlierVersionWithoutTheSeriesIsReadAsBefore() throws IOException {
        String earlier = csv(DemoCase.report())
                .replace(",convention,plan\r\n", ",convention\r\n")
                .replace(",\r\n", "\r\n");

        List<ImportedVisit> imported = ready(earlier);

        assertEquals(DemoCase.visits().stream().map(VisitRecord::visit).toList(), visits(imported));
        imported.forEach(visit -> assertEquals("", visit.content().plan()));
    }

    /** What a recogniser is sure of has as many digits as a double has. */
    @Test
    void aConfidenceOfManyDigitsComesBack() throws IOException {
        String written = csv(reportOf(List.of(new VisitScript(1, "demo-08", "2026-04-01T08:00:00+02:00")
                .joint("MP", 50, 0)
                .record())));
        String real = written.replaceFirst("(?<=,)0\\.[0-9]+(?=,PT)", "0.840127762787365");
        assertTrue(real.contains(",0.840127762787365,"), real);

        ImportedVisit visit = ready(real).get(0);

        assertEquals(
                real,
                csv(reportOf(
                        List.of(new VisitRecord(visit.visit(), visit.content().journal())))));
    }

    @Test
    void theJournalSaysThatAVisitWasImported() throws IOException {
        ready(csv(DemoCase.report()))
                .forEach(visit -> assertTrue(visit.content().journal().stream()
                        .anyMatch(event -> event instanceof JournalEvent.Ended ended
                                && ended.by().equals("import (there visit " + visit.sourceId() + ")"))));
    }

    @Test
    void aVisitWithoutEntriesComesBack() throws IOException {
        VisitRecord empty = new VisitScript(7, "demo-08", "2026-04-01T08:00:00.125+02:00")
                .end()
                .record();

        assertEquals(List.of(empty.visit()), visits(ready(csv(reportOf(List.of(empty))))));
    }

    @Test
    void textThatLooksLikeAFormulaIsDefusedAndComesBack() throws IOException {
        VisitScript script = new VisitScript(1, "demo-09", "2026-04-01T08:00:00+02:00");
        List<String> dangerous =
                List.of("=1+1", "+1", "-1", "@SUM(A1)", "\t=1", "'=1", "a\\b|c;d=e\nnext \"q\", f\r\n");
        dangerous.forEach(note -> script.take(Measure.of("IP", Motion.FLEXION), Angle.of(40))
                .remark(new Remark.Note(note))
                .release(note));
        VisitRecord record = script.record();

        String csv = csv(reportOf(List.of(record)));

        assertEquals(List.of(record.visit()), visits(ready(csv)));
        assertEquals(
                dangerous.subList(0, 6),
                dangerous.subList(0, 6).stream()
                        .filter(note -> csv.contains(",'" + note + ","))
                        .toList());
        assertFalse(csv.contains(",=1+1,"));
    }

    /** RFC 4180, section 2: lines end in CRLF (rule 1) and every line has the same number of fields (rule 4). */
    @Test
    void linesEndInCrLfAndAreEquallyWide() throws IOException {
        String csv = csv(reportOf(List.of(new VisitScript(1, "demo-08", "2026-04-01T08:00:00+02:00")
                .joint("MP", 50, 0)
                .joint("IP", 60, -10)
                .record())));

        String[] lines = csv.split("\r\n");
        assertEquals(5, lines.length);
        assertTrue(csv.endsWith("\r\n"));
        for (String line : lines) {
            String withoutQuoted = line.replaceAll("\"[^\"]*\"", "quoted");
            assertEquals(Column.values().length, withoutQuoted.split(",", -1).length, line);
        }
    }

    @Test
    void directionsAreKindsAndNoNumberHasASign() throws IOException {
        String csv = csv(DemoCase.report());

        assertTrue(csv.contains(",right,IP,extension,active,deficit,5,deg,"));
        assertTrue(csv.contains(",left,IP,extension,active,hyperextension,55,deg,"));
        assertTrue(csv.contains(",right,IP,extension,passive,neutral,0,deg,"));
        assertTrue(csv.contains(",right,IP,flexion,passive,not_tested,,,protocol,"));
        assertFalse(csv.matches("(?s).*,-[0-9].*"));
    }

    static Report reportOf(List<VisitRecord> visits) {
        return Report.of(DemoCase.source(visits));
    }

    static String csv(Report report) {
        return Written.text(new CsvWriter(), report);
    }

    static CsvImport read(String csv) throws IOException {
        return CsvReader.read(new ByteArrayInputStream(csv.getBytes(StandardCharsets.UTF_8)));
    }

    private static List<ImportedVisit> ready(String csv) throws IOException {
        return assertInstanceOf(CsvImport.Ready.class, read(csv)).visits();
    }

    private static List<Visit> visits(List<ImportedVisit> imported) {
        return imported.stream().map(ImportedVisit::visit).toList();
    }
}
