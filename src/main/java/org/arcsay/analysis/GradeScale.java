package org.arcsay.analysis;

import java.math.BigDecimal;
import java.util.List;
import org.arcsay.tables.Provenance;
import org.arcsay.tables.Row;
import org.arcsay.tables.Table;

/**
 * A published way to turn a percentage of total motion into a word.
 *
 * @param id stable id, such as "strickland-1980"
 * @param title for headings
 * @param bands best first; the last has no lower bound
 */
public record GradeScale(String id, String title, List<Band> bands) {
    public GradeScale {
        bands = List.copyOf(bands);
        if (bands.isEmpty() || bands.get(bands.size() - 1).bound() != Bound.NONE) {
            throw new IllegalArgumentException("the last band of '" + id + "' must be open below");
        }
    }

    /** The scales shipped with the program, {@code tables/grades.tsv}. */
    public static List<GradeScale> standard() {
        return read(Table.shipped("grades.tsv"));
    }

    static List<GradeScale> read(Table table) {
        return table.groups("scale").entrySet().stream()
                .map(scale -> scale(scale.getKey(), scale.getValue()))
                .toList();
    }

    private static GradeScale scale(String id, List<Row> rows) {
        return new GradeScale(
                id,
                rows.get(0).map(row -> row.text("title")),
                rows.stream().map(row -> row.map(Band::read)).toList());
    }

    /** The band in which an unrounded percentage falls. */
    public Band grade(Percent percent) {
        return bands.stream().filter(band -> band.holds(percent)).findFirst().orElseThrow();
    }

    /** How the lower bound of a band is meant. */
    public enum Bound {
        /** The bound itself belongs to the band. */
        AT_LEAST,
        /** The bound itself belongs to the band below. */
        ABOVE,
        NONE
    }

    /**
     * One band.
     *
     * @param label such as "Good"
     * @param bound how the lower bound is meant
     * @param percent the lower bound; 0 where there is none
     * @param provenance where it comes from
     */
    public record Band(String label, Bound bound, BigDecimal percent, Provenance provenance) {
        static Band read(Row row) {
            Bound bound =
                    switch (row.text("bound")) {
                        case "at least" -> Bound.AT_LEAST;
                        case "above" -> Bound.ABOVE;
                        case "none" -> Bound.NONE;
                        default -> throw new IllegalArgumentException("'bound' must be at least, above or none");
                    };
            BigDecimal percent = row.optionalNumber("percent").orElse(BigDecimal.ZERO);
            return new Band(row.text("label"), bound, percent, row.provenance());
        }

        boolean holds(Percent share) {
            int order = share.compareTo(percent);
            return bound == Bound.NONE || order > 0 || (order == 0 && bound == Bound.AT_LEAST);
        }

        /** Such as "Good (at least 70 %)". */
        public String words() {
            return switch (bound) {
                case AT_LEAST -> label + " (at least " + percent.toPlainString() + " %)";
                case ABOVE -> label + " (above " + percent.toPlainString() + " %)";
                case NONE -> label + " (below every other band)";
            };
        }
    }
}
