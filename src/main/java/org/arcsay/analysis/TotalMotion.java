package org.arcsay.analysis;

import java.math.BigDecimal;
import java.util.Arrays;
import java.util.List;
import org.arcsay.model.Site;
import org.arcsay.tables.Provenance;
import org.arcsay.tables.Row;

/**
 * How the total motion of a ray is made up; one line of {@code tables/totals.tsv}.
 *
 * @param id stable id, such as "thumb"
 * @param title for headings
 * @param sites the joints that are summed
 * @param reference the published full motion in degrees
 * @param scale the usual bands
 * @param provenance where the reference comes from
 */
public record TotalMotion(
        String id, String title, List<Site> sites, BigDecimal reference, GradeScale scale, Provenance provenance) {
    public TotalMotion {
        sites = List.copyOf(sites);
    }

    static TotalMotion read(Row row, List<GradeScale> scales) {
        String scale = row.text("scale");
        return new TotalMotion(
                row.text("total"),
                row.text("title"),
                Arrays.stream(row.text("sites").split("\\s*,\\s*"))
                        .map(Site::new)
                        .toList(),
                row.number("reference"),
                scales.stream()
                        .filter(known -> known.id().equals(scale))
                        .findFirst()
                        .orElseThrow(() -> new IllegalArgumentException("no scale is called '" + scale + "'")),
                row.provenance());
    }
}
