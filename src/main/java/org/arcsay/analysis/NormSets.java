package org.arcsay.analysis;

import java.util.List;
import java.util.Optional;
import org.arcsay.tables.Row;
import org.arcsay.tables.Table;

/** The named norm sets of {@code tables/norms.tsv}. */
public final class NormSets {
    private static final NormSets STANDARD = new NormSets(Table.shipped("norms.tsv"));

    private static final String USUAL = "barakat-2013";

    private final List<NormSet> sets;

    private NormSets(Table table) {
        this.sets = table.groups("set").entrySet().stream()
                .map(set -> set(set.getKey(), set.getValue()))
                .toList();
    }

    private static NormSet set(String id, List<Row> rows) {
        return new NormSet(
                id,
                rows.get(0).map(row -> row.text("title")),
                rows.stream().map(row -> row.map(Norm::read)).toList());
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

    /** The set that is shown where a clinic has chosen none. */
    public NormSet usual() {
        return named(USUAL).orElseGet(() -> sets.get(0));
    }

    public List<NormSet> all() {
        return sets;
    }

    public Optional<NormSet> named(String id) {
        return sets.stream().filter(set -> set.id().equals(id)).findFirst();
    }
}
