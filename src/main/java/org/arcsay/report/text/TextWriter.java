package org.arcsay.report.text;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.arcsay.analysis.Difference;
import org.arcsay.model.Entry;
import org.arcsay.model.Side;
import org.arcsay.model.Visit;
import org.arcsay.report.content.AcceptedFinding;
import org.arcsay.report.content.Cell;
import org.arcsay.report.content.Report;
import org.arcsay.report.content.ReportWriter;
import org.arcsay.report.content.Row;
import org.arcsay.report.content.Section;
import org.arcsay.report.content.TotalLine;
import org.arcsay.report.content.Trend;

/** Writes the reported visit as plain UTF-8 text, one fact a line, that stays legible in any font. */
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
                "Total motion",
                report.totals().stream().flatMap(TextWriter::total).toList());
        report.sections().stream()
                .filter(section -> !section.title().equals(Section.PROTOCOL))
                .forEach(section -> section(
                        text,
                        section.title(),
                        section.facts().stream().map(Section.Fact::sentence).toList()));
        section(text, "Over the visits", trends(report));
        section(
                text,
                "Asked about",
                report.accepted().stream().map(TextWriter::finding).toList());
        section(text, "How to read this", report.legend());
        section(text, "Compared with", report.basis());
        section(text, "Measurement error", report.errors());
        section(text, "Cautions", report.cautions());
        section(text, "Made by", versions(report));
        return text.toString();
    }

    private static void head(StringBuilder text, Report report) {
        Visit visit = report.current().visit();
        line(text, "Range of motion, patient " + visit.patient());
        line(
                text,
                "Visit of " + TIME.format(visit.startedAt()) + ", "
                        + report.standing().code());
        report.sections().stream()
                .filter(section -> section.title().equals(Section.PROTOCOL))
                .forEach(section -> line(
                        text,
                        section.title() + ": "
                                + section.facts().stream()
                                        .map(Section.Fact::words)
                                        .collect(Collectors.joining("; "))));
        line(text, "");
    }

    private static void row(StringBuilder text, Row row) {
        String hands = Stream.of(Side.RIGHT, Side.LEFT)
                .filter(side -> !row.cell(side).isEmpty())
                .map(side -> hand(side, row.cell(side)))
                .collect(Collectors.joining(", "));
        line(text, row.words() + ": " + hands);
        difference(text, "right beside left", row.right().comparison().otherHand());
        for (Side side : List.of(Side.RIGHT, Side.LEFT)) {
            Optional<Difference> last = row.cell(side).comparison().last();
            String since = last.map(known -> DateTimeFormatter.ISO_LOCAL_DATE.format(known.thenAt()))
                    .orElse("");
            difference(text, side.word() + " since " + since, last);
        }
        row.norm()
                .ifPresent(norm -> line(
                        text, "  norm: " + norm.brief() + " " + norm.scale().unit()));
        row.entries().filter(entry -> !entry.remarks().isEmpty()).forEach(entry -> line(text, "  " + remarks(entry)));
    }

    private static String hand(Side side, Cell cell) {
        return side.word() + " " + cell.words() + (cell.isPreliminary() ? " (preliminary)" : "");
    }

    private static void difference(StringBuilder text, String label, Optional<Difference> difference) {
        difference.ifPresent(known -> line(text, "  " + label + ": " + known.words()));
    }

    private static String remarks(Entry entry) {
        return entry.reading().side().word() + " remarks: "
                + entry.remarks().stream()
                        .map(remark -> remark.words().replaceAll("\\s+", " "))
                        .collect(Collectors.joining("; "));
    }

    private static Stream<String> total(TotalLine line) {
        return Stream.concat(
                Stream.of(line.words()), line.changes().stream().map(change -> line.heading() + " " + change));
    }

    private static List<String> trends(Report report) {
        return report.trends().stream()
                .filter(trend -> trend.points().size() > 1)
                .map(Trend::words)
                .toList();
    }

    private static String finding(AcceptedFinding accepted) {
        return accepted.entry().reading().slot().words() + ": "
                + accepted.finding().sentence() + " " + accepted.outcome();
    }

    private static List<String> versions(Report report) {
        List<String> lines = new ArrayList<>();
        lines.add(report.source().program() + ", report of "
                + TIME.format(report.source().createdAt()));
        report.versions()
                .forEach(v ->
                        lines.add("grammar " + v.grammar() + ", speech model " + v.model() + ", rules " + v.rules()));
        return lines;
    }

    private static void section(StringBuilder text, String title, List<String> sentences) {
        if (!sentences.isEmpty()) {
            line(text, "");
            line(text, title);
            sentences.forEach(sentence -> line(text, "- " + sentence));
        }
    }

    private static void line(StringBuilder text, String line) {
        text.append(line).append('\n');
    }
}
