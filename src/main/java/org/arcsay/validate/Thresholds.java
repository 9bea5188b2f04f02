package org.arcsay.validate;

import java.math.BigDecimal;
import java.util.List;
import org.arcsay.tables.Provenance;
import org.arcsay.tables.Row;
import org.arcsay.tables.Table;
import org.arcsay.tables.TableException;

/** The single numbers that rules compare with; see {@code tables/thresholds.tsv}. */
public final class Thresholds {
    private final Table table;
    private final List<Line> lines;

    private Thresholds(Table table) {
        this.table = table;
        this.lines = table.map(Line::read);
    }

    public static Thresholds shipped() {
        return new Thresholds(Table.shipped("thresholds.tsv"));
    }

    /**
     * Thresholds of a clinic.
     *
     * @throws TableException naming the line that cannot be used
     */
    public static Thresholds read(String name, String text) {
        return new Thresholds(Table.read(name, text));
    }

    public List<Line> lines() {
        return lines;
    }

    BigDecimal number(String id) {
        return line(id).value();
    }

    Provenance provenance(String id) {
        return line(id).provenance();
    }

    String text() {
        return table.text();
    }

    private Line line(String id) {
        return lines.stream()
                .filter(line -> line.id().equals(id))
                .findFirst()
                .orElseThrow(() -> new TableException(
                        "The table " + table.name() + " has no line '" + id + "'; add it as in the shipped table."));
    }

    /**
     * One number.
     *
     * @param id stable id
     * @param value the number, above 0
     * @param unit its unit
     * @param meaning one sentence
     * @param provenance where it comes from
     */
    public record Line(String id, BigDecimal value, String unit, String meaning, Provenance provenance) {
        static Line read(Row row) {
            BigDecimal value = row.number("value");
            if (value.signum() <= 0) {
                throw new IllegalArgumentException("'value' must be above 0");
            }
            return new Line(row.text("id"), value, row.text("unit"), row.text("meaning"), row.provenance());
        }
    }
}
