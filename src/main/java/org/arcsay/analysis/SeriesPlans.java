package org.arcsay.analysis;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.arcsay.analysis.SeriesPlan.Step;
import org.arcsay.model.Measure;
import org.arcsay.model.Mode;
import org.arcsay.tables.Row;
import org.arcsay.tables.Table;
import org.arcsay.tables.TableException;

/** The named series of {@code tables/plans.tsv}; a clinic may use its own. */
public final class SeriesPlans {
    private static final SeriesPlans STANDARD = new SeriesPlans(Table.shipped("plans.tsv"));

    private final List<SeriesPlan> plans;

    private SeriesPlans(Table table) {
        this.plans = table.groups("plan").entrySet().stream()
                .map(plan -> plan(plan.getKey(), plan.getValue()))
                .toList();
        if (plans.isEmpty()) {
            throw new TableException("The table " + table.name() + " holds no series; give at least one line.");
        }
    }

    private static SeriesPlan plan(String id, List<Row> rows) {
        Row first = rows.get(0);
        return new SeriesPlan(
                id,
                first.map(row -> row.text("title")),
                rows.stream().map(row -> row.map(SeriesPlans::step)).toList(),
                first.map(Row::provenance));
    }

    public static SeriesPlans standard() {
        return STANDARD;
    }

    /**
     * Series of a clinic.
     *
     * @throws org.arcsay.tables.TableException naming the line that cannot be used
     */
    public static SeriesPlans read(String name, String text) {
        return new SeriesPlans(Table.read(name, text));
    }

    /** The series that is proposed where a clinic has chosen none: the first of the table. */
    public SeriesPlan usual() {
        return plans.get(0);
    }

    public List<SeriesPlan> all() {
        return plans;
    }

    public Optional<SeriesPlan> named(String id) {
        return plans.stream().filter(plan -> plan.id().equals(id)).findFirst();
    }

    private static Step step(Row row) {
        boolean optional =
                switch (row.text("need")) {
                    case "required" -> false;
                    case "optional" -> true;
                    default -> throw new IllegalArgumentException("'need' must be required or optional");
                };
        return new Step(
                Measure.parse(row.text("measure")),
                Mode.valueOf(row.text("mode").toUpperCase(Locale.ROOT)),
                optional);
    }
}
