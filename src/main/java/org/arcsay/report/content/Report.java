package org.arcsay.report.content;

import java.time.OffsetDateTime;
import java.util.List;
import org.arcsay.model.ClinicSettings;
import org.arcsay.model.Versions;

/**
 * Everything that any format says about one visit and those before it.
 *
 * @param program name and version of the program
 * @param createdAt when the report was made
 * @param settings what the clinic has decided
 * @param visits the reported visit last, earlier ones before it, oldest first
 * @param rows the series of the reported visit, one row a measure and mode, in clinical order
 * @param accepted findings that were asked about and accepted
 * @param legend how directions are written, one sentence each
 * @param cautions what a reader has to bear in mind, one sentence each
 * @param versions the versions that produced the entries of the reported visit, each once
 */
public record Report(
        String program,
        OffsetDateTime createdAt,
        ClinicSettings settings,
        List<VisitRecord> visits,
        List<Row> rows,
        List<AcceptedFinding> accepted,
        List<String> legend,
        List<String> cautions,
        List<Versions> versions) {
    public Report {
        visits = List.copyOf(visits);
        rows = List.copyOf(rows);
        accepted = List.copyOf(accepted);
        legend = List.copyOf(legend);
        cautions = List.copyOf(cautions);
        versions = List.copyOf(versions);
    }

    /** The report of the last of these visits. */
    public static Report of(ReportSource source) {
        return new ReportBuilder(source).build();
    }

    /** The visit that is reported. */
    public VisitRecord current() {
        return visits.get(visits.size() - 1);
    }

    /** How far the report as a whole may be relied on. */
    public Standing standing() {
        return current().standing();
    }
}
