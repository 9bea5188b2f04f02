package org.arcsay.validate;

import java.math.BigDecimal;
import java.util.List;
import java.util.Optional;
import org.arcsay.model.Reading;
import org.arcsay.tables.MeasurePattern;
import org.arcsay.tables.Provenance;
import org.arcsay.tables.Row;
import org.arcsay.tables.Table;

/** How much two hands usually differ; see {@code tables/side-differences.tsv}. */
public final class SideDifferences {
    private final Table table;
    private final List<Line> lines;

    private SideDifferences(Table table) {
        this.table = table;
        this.lines = table.map(Line::read);
    }

    public static SideDifferences shipped() {
        return new SideDifferences(Table.shipped("side-differences.tsv"));
    }

    public List<Line> lines() {
        return lines;
    }

    Optional<Line> forReading(Reading reading) {
        return MeasurePattern.closest(lines.stream(), Line::pattern, reading.measure(), reading.mode());
    }

    String text() {
        return table.text();
    }

    /**
     * One line.
     *
     * @param pattern the measures it is about
     * @param unusual exceeded by about 1 in 20 healthy people
     * @param rare exceeded by about 1 in 100 healthy people
     * @param unit "degrees", "mm" or "points"
     * @param provenance where the numbers come from
     */
    public record Line(
            MeasurePattern pattern, BigDecimal unusual, BigDecimal rare, String unit, Provenance provenance) {
        static Line read(Row row) {
            return new Line(
                    MeasurePattern.read(row),
                    row.number("unusual"),
                    row.number("rare"),
                    row.text("unit"),
                    row.provenance());
        }
    }
}
