package org.arcsay.report.csv;

import java.io.IOException;
import java.io.OutputStream;
import java.io.OutputStreamWriter;
import java.io.Writer;
import java.math.BigDecimal;
import java.nio.charset.StandardCharsets;
import java.time.OffsetDateTime;
import java.time.format.DateTimeFormatter;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVPrinter;
import org.arcsay.model.Entry;
import org.arcsay.model.Heard;
import org.arcsay.model.Reading;
import org.arcsay.model.SignConvention;
import org.arcsay.model.Visit;
import org.arcsay.report.content.EntryTrail;
import org.arcsay.report.content.EntryTrail.Decision;
import org.arcsay.report.content.Report;
import org.arcsay.report.content.ReportWriter;
import org.arcsay.report.content.ValueParts;
import org.arcsay.report.content.VisitRecord;

/**
 * Writes every visit of a report as one CSV file after RFC 4180: UTF-8, a header row, lines that end in CRLF.
 *
 * <p>Numbers are unsigned with a decimal point and stand beside their kind. Times are ISO 8601 with offset. Rejected and
 * superseded entries are in it too, so that {@link CsvReader} can give the same visits back.
 */
public final class CsvWriter implements ReportWriter {
    @Override
    public void write(Report report, OutputStream out) throws IOException {
        Writer writer = new OutputStreamWriter(out, StandardCharsets.UTF_8);
        CSVPrinter printer = new CSVPrinter(writer, CSVFormat.RFC4180);
        printer.printRecord(Column.titles());
        for (VisitRecord visit : report.source().visits()) {
            writeVisit(printer, visit, report.source().settings().signConvention());
        }
        printer.flush();
    }

    private static void writeVisit(CSVPrinter printer, VisitRecord record, SignConvention convention)
            throws IOException {
        Map<Column, String> head = head(record, convention);
        if (record.visit().entries().isEmpty()) {
            print(printer, head);
        }
        for (Entry entry : record.visit().entries()) {
            Map<Column, String> row = new EnumMap<>(head);
            putEntry(row, entry);
            putReading(row, entry.reading());
            putTrail(row, record.trail(entry));
            putHeard(row, entry.heard());
            print(printer, row);
        }
    }

    private static void print(CSVPrinter printer, Map<Column, String> row) throws IOException {
        printer.printRecord(Arrays.stream(Column.values())
                .map(column -> SafeText.write(row.getOrDefault(column, "")))
                .toList());
    }

    private static Map<Column, String> head(VisitRecord record, SignConvention convention) {
        Visit visit = record.visit();
        Map<Column, String> row = new EnumMap<>(Column.class);
        row.put(Column.VISIT, Long.toString(visit.id()));
        row.put(Column.PATIENT, visit.patient().text());
        row.put(Column.VISIT_STARTED, time(visit.startedAt()));
        row.put(Column.VISIT_ENDED, visit.endedAt().map(CsvWriter::time).orElse(""));
        row.put(Column.CONVENTION, ValueParts.lower(convention));
        row.put(Column.PLAN, record.plan());
        return row;
    }

    private static void putEntry(Map<Column, String> row, Entry entry) {
        row.put(Column.ENTRY, Integer.toString(entry.number()));
        row.put(Column.TAKEN_AT, time(entry.takenAt()));
        row.put(Column.REMARKS, Cells.remarks(entry.remarks()));
        row.put(Column.STATUS, ValueParts.lower(entry.status()));
        row.put(Column.REPLACES, number(entry.replaces()));
        row.put(Column.FINDINGS, Cells.findings(entry.findings()));
    }

    private static void putReading(Map<Column, String> row, Reading reading) {
        row.put(Column.SIDE, ValueParts.lower(reading.side()));
        row.put(Column.JOINT, reading.measure().site().code());
        row.put(Column.MOTION, ValueParts.lower(reading.measure().motion()));
        row.put(Column.MODE, ValueParts.lower(reading.mode()));
        row.put(Column.PLACEMENT, ValueParts.lower(reading.placement()));
        ValueParts value = ValueParts.of(reading.value());
        row.put(Column.KIND, ValueParts.code(value.kind()));
        row.put(Column.VALUE, value.number().map(BigDecimal::toPlainString).orElse(""));
        row.put(Column.UNIT, value.unit());
        row.put(Column.DETAIL, value.detail());
    }

    private static void putTrail(Map<Column, String> row, EntryTrail trail) {
        row.put(Column.WAS_HELD, trail.held() ? "yes" : "no");
        row.put(Column.TAKEN_BY, trail.takenBy());
        row.put(Column.TAKEN_WHY, trail.takenWhy());
        put(row, trail.accepted(), Column.ACCEPTED_AT, Column.ACCEPTED_BY);
        row.put(Column.ACCEPTED_WHY, trail.accepted().map(Decision::why).orElse(""));
        put(row, trail.confirmed(), Column.CONFIRMED_AT, Column.CONFIRMED_BY);
        put(row, trail.rejected(), Column.REJECTED_AT, Column.REJECTED_BY);
        row.put(Column.REJECTED_WHY, trail.rejected().map(Decision::why).orElse(""));
    }

    private static void put(Map<Column, String> row, Optional<Decision> decision, Column at, Column by) {
        row.put(at, decision.map(d -> time(d.at())).orElse(""));
        row.put(by, decision.map(Decision::by).orElse(""));
    }

    private static void putHeard(Map<Column, String> row, Heard heard) {
        row.put(Column.HEARD_TEXT, heard.words());
        row.put(Column.HEARD_SOURCE, ValueParts.lower(heard.source()));
        row.put(Column.HEARD_CONFIDENCE, BigDecimal.valueOf(heard.confidence()).toPlainString());
        row.put(Column.HEARD_START, heard.start().toString());
        row.put(Column.HEARD_END, heard.end().toString());
        row.put(Column.GRAMMAR, heard.versions().grammar());
        row.put(Column.MODEL, heard.versions().model());
        row.put(Column.RULES, heard.versions().rules());
    }

    private static String time(OffsetDateTime time) {
        return DateTimeFormatter.ISO_OFFSET_DATE_TIME.format(time);
    }

    private static String number(OptionalInt number) {
        return number.isPresent() ? Integer.toString(number.getAsInt()) : "";
    }
}
