package org.arcsay.analysis;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.arcsay.tables.Row;
import org.arcsay.tables.Table;

/** The named norm sets of {@code tables/norms.tsv}. */
public final class NormSets {
    private static final NormSets STANDARD = new NormSets(Table.shipped("norms.tsv"));

    private final List<NormSet> sets;

    private NormSets(Table table) {
        Map<String, List<Row>> bySet = table.map(Function.identity()).stream()
                .collect(Collectors.groupingBy(row -> row.text("set"), LinkedHashMap::new, Collectors.toList()));
        table.map(Norm::read);
        this.sets = bySet.entrySet().stream()
                .map(set -> new NormSet(
                        set.getKey(),
                        set.getValue().get(0).text("title"),
                        set.getValue().stream().map(Norm::read).toList()))
                .toList();
    }

    public static NormSets standard() {
        return STANDARD;
    }

    /**
     * Norm sets of a clinic.
     *
     * @throws org.arcsay.tables.TableException naming the line that cannot be used
     */
    public static NormSets read(String name, String text) {
        return new NormSets(Table.read(name, text));
    }

    public List<NormSet> all() {
        return sets;
    }

    public Optional<NormSet> named(String id) {
        return sets.stream().filter(set -> set.id().equals(id)).findFirst();
    }
}
