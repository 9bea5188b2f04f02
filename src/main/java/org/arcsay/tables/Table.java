package org.arcsay.tables;

import java.io.IOException;
import java.io.InputStream;
import java.io.Reader;
import java.io.StringReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVRecord;
import org.apache.commons.csv.DuplicateHeaderMode;

/**
 * A table of text cells: tab-separated, UTF-8, the first line names the columns, lines that begin with # are remarks.
 */
public final class Table {
    private static final CSVFormat FORMAT = CSVFormat.TDF
            .builder()
            .setHeader()
            .setSkipHeaderRecord(true)
            .setCommentMarker('#')
            .setIgnoreEmptyLines(true)
            .setQuote(null)
            .setDuplicateHeaderMode(DuplicateHeaderMode.DISALLOW)
            .get();

    private final String name;
    private final String text;
    private final List<Row> rows;

    private Table(String name, String text, List<Row> rows) {
        this.name = name;
        this.text = text;
        this.rows = List.copyOf(rows);
    }

    /**
     * A table shipped with the program.
     *
     * @param name file name below {@code org/arcsay/tables}, such as "limits.tsv"
     */
    public static Table shipped(String name) {
        try (InputStream in = Table.class.getResourceAsStream("/org/arcsay/tables/" + name)) {
            if (in == null) {
                throw new TableException("The table " + name + " is missing from the program; install it again.");
            }
            return read(name, new String(in.readAllBytes(), StandardCharsets.UTF_8));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /**
     * A table from text.
     *
     * @param name how messages call it
     * @throws TableException when the text is no table
     */
    public static Table read(String name, String text) {
        try (Reader reader = new StringReader(text);
                CSVParser parser = CSVParser.parse(reader, FORMAT)) {
            List<Row> rows = new ArrayList<>();
            for (CSVRecord record : parser) {
                rows.add(new Row(name, parser.getCurrentLineNumber(), record));
            }
            return new Table(name, text, rows);
        } catch (IOException | IllegalArgumentException e) {
            throw new TableException("The table " + name + " cannot be read: " + e.getMessage(), e);
        }
    }

    public String name() {
        return name;
    }

    /** The whole text, for checksums. */
    public String text() {
        return text;
    }

    public List<Row> rows() {
        return rows;
    }

    /** The rows with the same cell in a column, in the order of the table. */
    public Map<String, List<Row>> groups(String column) {
        Map<String, List<Row>> groups = new LinkedHashMap<>();
        rows.forEach(row -> groups.computeIfAbsent(row.map(cells -> cells.text(column)), key -> new ArrayList<>())
                .add(row));
        return groups;
    }

    /**
     * Every row turned into a record.
     *
     * @throws TableException naming the line of the first row that the reader refuses
     */
    public <T> List<T> map(Function<Row, T> reader) {
        return rows.stream().map(row -> row.map(reader)).toList();
    }
}
