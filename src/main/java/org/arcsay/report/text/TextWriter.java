package org.arcsay.report.text;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.time.format.DateTimeFormatter;
import java.util.Locale;
import java.util.stream.Collectors;
import org.arcsay.model.Entry;
import org.arcsay.model.Side;
import org.arcsay.model.Visit;
import org.arcsay.report.content.AcceptedFinding;
import org.arcsay.report.content.Cell;
import org.arcsay.report.content.Report;
import org.arcsay.report.content.ReportWriter;
import org.arcsay.report.content.Row;

/** Writes the reported visit as plain UTF-8 text, one sentence a line, that stays legible in any font. */
public final class TextWriter implements ReportWriter {
    private static final DateTimeFormatter TIME = DateTimeFormatter.ofPattern("yyyy-MM-dd HH:mm xxx", Locale.ROOT);

    @Override
    public void write(Report report, OutputStream out) throws IOException {
        out.write(text(report).getBytes(StandardCharsets.UTF_8));
        out.flush();
    }

    private static String text(Report report) {
        StringBuilder text = new StringBuilder();
        head(text, report);
        report.rows().forEach(row -> row(text, row));
        section(
                text,
                "Asked about",
                report.accepted().stream().map(TextWriter::finding).toList());
        section(text, "How to read this", report.legend());
        section(text, "Cautions", report.cautions());
        return text.toString();
    }

    private static void head(StringBuilder text, Report report) {
        Visit visit = report.current().visit();
        line(text, "Range of motion, patient " + visit.patient());
        line(
                text,
                "Visit of " + TIME.format(visit.startedAt()) + ", "
                        + report.standing().code());
        line(text, "");
    }

    private static void row(StringBuilder text, Row row) {
        line(text, row.words() + ":");
        for (Side side : Side.values()) {
            Cell cell = row.cell(side);
            if (!cell.isEmpty()) {
                line(text, "  " + side.word() + " " + cell.words() + (cell.isPreliminary() ? " (preliminary)" : ""));
            }
        }
        row.entries().filter(entry -> !entry.remarks().isEmpty()).forEach(entry -> line(text, "  " + remarks(entry)));
    }

    private static String remarks(Entry entry) {
        return entry.reading().side().word() + " remarks: "
                + entry.remarks().stream()
                        .map(remark -> remark.words().replaceAll("\\s+", " "))
                        .collect(Collectors.joining("; "));
    }

    private static String finding(AcceptedFinding accepted) {
        return accepted.entry().reading().slot().words() + ": "
                + accepted.finding().sentence() + " " + accepted.outcome();
    }

    private static void section(StringBuilder text, String title, Iterable<String> sentences) {
        if (sentences.iterator().hasNext()) {
            line(text, "");
            line(text, title);
            sentences.forEach(sentence -> line(text, "- " + sentence));
        }
    }

    private static void line(StringBuilder text, String line) {
        text.append(line).append('\n');
    }
}
