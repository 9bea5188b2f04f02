package org.arcsay.report.content;

import java.time.OffsetDateTime;
import java.util.List;
import org.arcsay.analysis.Comparison.Yardstick;
import org.arcsay.analysis.Customs;
import org.arcsay.analysis.NormSet;
import org.arcsay.model.ClinicSettings;

/**
 * What a report is made from.
 *
 * @param visits one patient's visits, oldest first; the last one is the one reported, at least one
 * @param settings what the clinic has decided
 * @param customs norm set, measurement error and notation
 * @param createdAt the time that the report carries
 * @param program name and version of the program, such as "Arcsay 0.1.0"
 */
public record ReportSource(
        List<VisitRecord> visits, ClinicSettings settings, Customs customs, OffsetDateTime createdAt, String program) {
    public ReportSource {
        visits = List.copyOf(visits);
        if (visits.isEmpty()) {
            throw new IllegalArgumentException("a report needs at least one visit");
        }
        if (visits.stream().map(v -> v.visit().patient()).distinct().count() > 1) {
            throw new IllegalArgumentException("a report is about one patient");
        }
    }

    /** The norm set that the report shows and names. */
    public NormSet norms() {
        return customs.norms();
    }

    /** What counts as a change. */
    public Yardstick yardstick() {
        return customs.yardstick();
    }
}
