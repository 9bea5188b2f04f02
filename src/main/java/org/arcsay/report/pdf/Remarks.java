package org.arcsay.report.pdf;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.arcsay.model.Entry;
import org.arcsay.model.Placement;
import org.arcsay.model.Remark;
import org.arcsay.model.Side;
import org.arcsay.report.content.Brief;
import org.arcsay.report.content.Report;
import org.arcsay.report.content.Row;
import org.arcsay.report.content.VisitRecord;

/** The numbered remarks of one hand: what was said about a reading, where the instrument lay, what was corrected. */
final class Remarks {
    private final VisitRecord visit;
    private final Side side;
    private final Map<Row, List<String>> byRow = new LinkedHashMap<>();

    Remarks(Report report, Side side) {
        this.visit = report.current();
        this.side = side;
        report.rows().forEach(row -> {
            List<String> texts =
                    row.cell(side).entries().stream().flatMap(this::texts).toList();
            if (!texts.isEmpty()) {
                byRow.put(row, texts);
            }
        });
    }

    /** The number of a row's remark, or nothing. */
    String numbers(Row row) {
        int index = new ArrayList<>(byRow.keySet()).indexOf(row);
        return index < 0 ? "" : Integer.toString(index + 1);
    }

    /** All remarks in the order of their numbers. */
    List<String> sentences() {
        return byRow.entrySet().stream()
                .map(remark -> Wording.capital(remark.getKey().words()) + ": " + String.join("; ", remark.getValue()))
                .toList();
    }

    private Stream<String> texts(Entry entry) {
        Stream<String> placed =
                entry.reading().placement() == Placement.LATERAL ? Stream.of("lateral placement") : Stream.of();
        Stream<String> said = entry.remarks().stream().map(Remark::words);
        return Stream.of(placed, said, corrected(entry)).flatMap(text -> text);
    }

    private Stream<String> corrected(Entry entry) {
        return visit.corrected(entry).stream().map(older -> {
            String why = visit.trail(entry).takenWhy();
            String hand =
                    older.reading().side() == side ? "" : older.reading().side().word() + " ";
            String after = visit.trail(older).confirmed().isPresent() ? " after it had been confirmed" : "";
            return "corrected from " + hand + Brief.value(older.reading().value()) + after
                    + (why.isBlank() ? "" : " (" + why + ")");
        });
    }
}
