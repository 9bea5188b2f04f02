package org.arcsay.validate;

import java.util.List;
import java.util.Optional;
import org.arcsay.model.Reading;
import org.arcsay.tables.MeasurePattern;
import org.arcsay.tables.Table;

/** The table of limits; see {@code tables/limits.tsv}. */
public final class Limits {
    private final Table table;
    private final List<Limit> lines;

    private Limits(Table table) {
        this.table = table;
        this.lines = table.map(Limit::read);
    }

    /** The limits shipped with the program. */
    public static Limits shipped() {
        return new Limits(Table.shipped("limits.tsv"));
    }

    /**
     * Limits of a clinic.
     *
     * @throws org.arcsay.tables.TableException naming the line that cannot be used
     */
    public static Limits read(String name, String text) {
        return new Limits(Table.read(name, text));
    }

    /** The line that fits a reading most closely. */
    public Optional<Limit> forReading(Reading reading) {
        return MeasurePattern.closest(
                lines.stream().filter(line -> line.limits(reading)), Limit::pattern, reading.measure(), reading.mode());
    }

    public List<Limit> lines() {
        return lines;
    }

    String text() {
        return table.text();
    }
}
