package org.arcsay.tables;

import java.math.BigDecimal;
import java.util.Optional;
import java.util.function.Function;
import org.apache.commons.csv.CSVRecord;

/** One line of a {@link Table}; a cell that is empty or "-" holds nothing. */
public final class Row {
    private final String table;
    private final long line;
    private final CSVRecord cells;

    Row(String table, long line, CSVRecord cells) {
        this.table = table;
        this.line = line;
        this.cells = cells;
    }

    /**
     * @throws IllegalArgumentException when the cell holds nothing
     */
    public String text(String column) {
        return optional(column).orElseThrow(() -> new IllegalArgumentException("'" + column + "' is empty"));
    }

    public Optional<String> optional(String column) {
        if (!cells.isSet(column)) {
            return Optional.empty();
        }
        String cell = cells.get(column).strip();
        return cell.isEmpty() || cell.equals("-") ? Optional.empty() : Optional.of(cell);
    }

    public BigDecimal number(String column) {
        return decimal(column, text(column));
    }

    public Optional<BigDecimal> optionalNumber(String column) {
        return optional(column).map(cell -> decimal(column, cell));
    }

    /** The columns "mark" and "source". */
    public Provenance provenance() {
        return new Provenance(Mark.parse(text("mark")), text("source"));
    }

    /**
     * This row turned into a record.
     *
     * @throws TableException naming the line when the reader refuses it
     */
    public <T> T map(Function<Row, T> reader) {
        try {
            return reader.apply(this);
        } catch (IllegalArgumentException e) {
            throw new TableException(
                    "Line " + line + " of the table " + table + " cannot be used: " + e.getMessage() + ".", e);
        }
    }

    private static BigDecimal decimal(String column, String cell) {
        try {
            return new BigDecimal(cell);
        } catch (NumberFormatException e) {
            throw new IllegalArgumentException("'" + column + "' must be a number, not '" + cell + "'", e);
        }
    }
}
