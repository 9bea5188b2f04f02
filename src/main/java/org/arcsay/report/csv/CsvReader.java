package org.arcsay.report.csv;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.Reader;
import java.io.UncheckedIOException;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.EnumSet;
import java.util.Iterator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVRecord;
import org.arcsay.model.PatientCode;
import org.arcsay.model.SignConvention;
import org.arcsay.report.content.ValueParts;

/**
 * Reads what {@link CsvWriter} writes. Every problem of the file is named with line and column; a file with a problem gives
 * no visit at all. For one thread and one file.
 */
public final class CsvReader {
    /** Complaints after which reading stops; a file that is wrong throughout is not worth more. */
    private static final int MOST_PROBLEMS = 100;

    private final List<ImportProblem> problems = new ArrayList<>();
    private final Map<Long, VisitRows> visits = new LinkedHashMap<>();

    private CsvReader() {}

    /**
     * Reads a whole file.
     *
     * @param in UTF-8 text, with or without a byte order mark; not closed
     * @throws IOException when the stream itself fails
     */
    public static CsvImport read(InputStream in) throws IOException {
        CsvReader reader = new CsvReader();
        reader.readAll(in);
        return reader.result();
    }

    private void readAll(InputStream in) throws IOException {
        try (CSVParser parser = CSVFormat.RFC4180.parse(decoded(in))) {
            readRows(parser);
        } catch (CharacterCodingException e) {
            problems.add(new ImportProblem(1, 0, "", unreadable(e)));
        }
    }

    private void readRows(CSVParser parser) throws IOException {
        long line = 1;
        try {
            Iterator<CSVRecord> records = parser.iterator();
            Map<Column, Integer> positions = records.hasNext() ? header(records.next()) : noHeader();
            boolean complete = positions.keySet().containsAll(EnumSet.complementOf(EnumSet.copyOf(Column.LATER)));
            line = parser.getCurrentLineNumber() + 1;
            while (complete && problems.size() < MOST_PROBLEMS && records.hasNext()) {
                readRow(line, positions, records.next());
                line = parser.getCurrentLineNumber() + 1;
            }
        } catch (UncheckedIOException e) {
            problems.add(new ImportProblem(line, 0, "", unreadable(Objects.requireNonNull(e.getCause()))));
        }
    }

    private static String unreadable(IOException cause) throws IOException {
        if (cause instanceof CharacterCodingException) {
            return "the file is not UTF-8 text from here on; save it as CSV UTF-8 and try again";
        }
        if (cause.getClass().getPackage().equals(CSVFormat.class.getPackage())
                || cause.getClass() == IOException.class) {
            return "quotation marks do not match from here on: " + cause.getMessage();
        }
        throw cause;
    }

    private static Map<Column, Integer> noHeader() {
        return Map.of();
    }

    private Map<Column, Integer> header(CSVRecord record) {
        Map<Column, Integer> positions = new EnumMap<>(Column.class);
        for (Column column : Column.values()) {
            int at = record.toList().indexOf(column.title());
            if (at < 0 && Column.LATER.contains(column)) {
                continue;
            }
            if (at < 0) {
                problems.add(new ImportProblem(1, 0, "", "the column '" + column.title() + "' is missing"));
            } else {
                positions.put(column, at);
            }
        }
        for (int i = 0; i < record.size(); i++) {
            if (!positions.containsValue(i)) {
                problems.add(
                        new ImportProblem(1, i + 1, record.get(i), "this column is not known here, or stands twice"));
            }
        }
        return positions;
    }

    private void readRow(long line, Map<Column, Integer> positions, CSVRecord record) {
        if (record.size() != positions.size()) {
            problems.add(new ImportProblem(
                    line, 0, "", "has " + record.size() + " cells, but the header has " + positions.size()));
            return;
        }
        Row row = new Row(line, positions, record.toList(), problems::add);
        row.need(Column.CONVENTION, text -> ValueParts.code(SignConvention.class, text, "convention"));
        Optional<VisitRows> visit = head(row).flatMap(head -> visit(row, head));
        if (!row.isEmpty(Column.ENTRY)) {
            Optional<EntryRow> entry = EntryRow.read(row);
            visit.ifPresent(v -> entry.ifPresentOrElse(v::add, v::addUnreadable));
        }
    }

    private static Optional<VisitRows.Head> head(Row row) {
        Optional<Long> id = row.need(Column.VISIT, text -> (long) Cells.wholeNumber(text));
        Optional<PatientCode> patient = row.need(Column.PATIENT, PatientCode::new);
        Optional<OffsetDateTime> started = row.need(Column.VISIT_STARTED, OffsetDateTime::parse);
        Optional<OffsetDateTime> ended = row.optional(Column.VISIT_ENDED, OffsetDateTime::parse);
        if (id.isEmpty() || patient.isEmpty() || started.isEmpty()) {
            return Optional.empty();
        }
        return Optional.of(new VisitRows.Head(id.get(), patient.get(), started.get(), ended, row.text(Column.PLAN)));
    }

    private Optional<VisitRows> visit(Row row, VisitRows.Head head) {
        VisitRows visit = visits.computeIfAbsent(head.id(), id -> new VisitRows(head));
        if (!visit.head().equals(head)) {
            row.complain(
                    Column.VISIT,
                    "visit " + head.id() + " has another patient, start, end or plan here than in its first row");
            return Optional.empty();
        }
        return Optional.of(visit);
    }

    private CsvImport result() {
        List<ImportedVisit> imported = new ArrayList<>();
        if (problems.isEmpty()) {
            visits.values().forEach(visit -> visit.finish().ifPresent(imported::add));
        }
        if (problems.isEmpty() && imported.isEmpty()) {
            problems.add(new ImportProblem(1, 0, "", "the file holds no visit"));
        }
        return problems.isEmpty() ? new CsvImport.Ready(imported) : new CsvImport.Refused(problems);
    }

    private static Reader decoded(InputStream in) throws IOException {
        BufferedReader reader = new BufferedReader(new InputStreamReader(in, StandardCharsets.UTF_8.newDecoder()));
        reader.mark(1);
        if (reader.read() != '\uFEFF') {
            reader.reset();
        }
        return reader;
    }
}
