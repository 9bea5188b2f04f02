package org.arcsay.analysis;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.arcsay.analysis.SeriesPlan.Step;
import org.arcsay.model.Measure;
import org.arcsay.model.Mode;
import org.arcsay.tables.Row;
import org.arcsay.tables.Table;

/** The named series of {@code tables/plans.tsv}; a clinic may use its own. */
public final class SeriesPlans {
    private static final SeriesPlans STANDARD = new SeriesPlans(Table.shipped("plans.tsv"));

    private final List<SeriesPlan> plans;

    private SeriesPlans(Table table) {
        Map<String, List<Row>> byPlan = table.map(Function.identity()).stream()
                .collect(Collectors.groupingBy(row -> row.text("plan"), LinkedHashMap::new, Collectors.toList()));
        table.map(SeriesPlans::step);
        this.plans = byPlan.entrySet().stream()
                .map(plan -> new SeriesPlan(
                        plan.getKey(),
                        plan.getValue().get(0).text("title"),
                        plan.getValue().stream().map(SeriesPlans::step).toList(),
                        plan.getValue().get(0).provenance()))
                .toList();
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
