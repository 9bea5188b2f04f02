package org.arcsay.report.compare;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.arcsay.model.PatientCode;
import org.arcsay.model.Side;
import org.arcsay.report.Format;
import org.arcsay.report.ReportWriters;
import org.arcsay.report.content.JointRange;
import org.arcsay.report.content.RangeTrend;
import org.arcsay.report.content.Report;
import org.arcsay.report.content.ReportSource;
import org.arcsay.report.content.Section;
import org.arcsay.report.content.Trend;
import org.arcsay.report.content.VisitRecord;
import org.arcsay.store.StoreException;

/**
 * One thread at a time may use it. What the comparison shows: a patient, one of the visits, and one hand in it beside the other
 * hand, earlier visits and norms.
 */
public final class CompareModel {
    private final Records records;
    private final Function<List<VisitRecord>, ReportSource> sources;
    private final ReportWriters writers;
    private Optional<PatientCode> patient = Optional.empty();
    private List<VisitRecord> visits = List.of();
    private Optional<Report> report = Optional.empty();
    private Side side = Side.RIGHT;
    private String message = "";

    /** Where patients and visits come from. */
    public interface Records {
        /** All patients, in the order of their codes. */
        List<PatientCode> patients() throws StoreException;

        /** All visits of one patient, oldest first. */
        List<VisitRecord> visits(PatientCode patient) throws StoreException;
    }

    /**
     * @param sources adds the clinic's settings and the time to the visits of a report
     */
    public CompareModel(Records records, Function<List<VisitRecord>, ReportSource> sources, ReportWriters writers) {
        this.records = records;
        this.sources = sources;
        this.writers = writers;
    }

    /** What happened last, for the user; "" when there is nothing to say. */
    public String message() {
        return message;
    }

    /** Patients to choose from; none, with a message, when the records cannot be read. */
    public List<PatientCode> patients() {
        try {
            List<PatientCode> patients = records.patients();
            message = patients.isEmpty() ? "There are no patients yet. Capture a visit first." : "";
            return patients;
        } catch (StoreException e) {
            message = String.valueOf(e.getMessage());
            return List.of();
        }
    }

    /** The patient that was chosen last. */
    public Optional<PatientCode> patient() {
        return patient;
    }

    /** Shows the newest visit of a patient. */
    public void choosePatient(PatientCode chosen) {
        patient = Optional.of(chosen);
        visits = List.of();
        report = Optional.empty();
        try {
            visits = records.visits(chosen);
            message = visits.isEmpty() ? chosen + " has no visit." : "";
        } catch (StoreException e) {
            message = String.valueOf(e.getMessage());
        }
        if (!visits.isEmpty()) {
            chooseVisit(visits.get(visits.size() - 1).visit().id());
        }
    }

    /** Visits of the patient to choose from, newest first. */
    public List<VisitLine> visits() {
        return visits.stream()
                .map(VisitLine::of)
                .sorted(Comparator.comparing(VisitLine::startedAt).reversed())
                .toList();
    }

    /** Shows a visit beside the ones before it; keeps the hand if it has readings, else shows the other one. */
    public void chooseVisit(long id) {
        List<VisitRecord> upTo = new ArrayList<>();
        for (VisitRecord visit : visits) {
            upTo.add(visit);
            if (visit.visit().id() == id) {
                report = Optional.of(Report.of(sources.apply(upTo)));
                side = report.get().sides().contains(side)
                                || report.get().sides().isEmpty()
                        ? side
                        : side.other();
                return;
            }
        }
    }

    /** The report of the chosen visit. */
    public Optional<Report> report() {
        return report;
    }

    public Side side() {
        return side;
    }

    public void chooseSide(Side chosen) {
        side = chosen;
    }

    /** The series of the chosen hand, one line a measure and mode. */
    public List<CompareLine> lines() {
        return report.stream()
                .flatMap(shown -> shown.rows().stream())
                .filter(row -> !row.cell(side).isEmpty())
                .map(row -> CompareLine.of(row, side))
                .toList();
    }

    /** Total motion of the chosen hand, one sentence each. */
    public List<String> totals() {
        return report.stream()
                .flatMap(shown -> shown.totals().stream())
                .filter(line -> line.total().side() == side)
                .map(line -> Stream.concat(Stream.of(line.words()), line.changes().stream())
                        .collect(Collectors.joining("; ")))
                .toList();
    }

    /** What there is beyond the series of the chosen hand: protocol, completeness, opposition, arcs, trials, first and best. */
    public List<Section> sections() {
        return report.stream()
                .flatMap(shown -> shown.sections().stream())
                .filter(section -> !section.about(side).isEmpty())
                .toList();
    }

    /** Joints of the chosen hand to draw; each carries the same as text. */
    public List<JointRange> ranges() {
        return report.stream()
                .flatMap(shown -> shown.ranges().stream())
                .filter(range -> range.side() == side)
                .toList();
    }

    /** Ranges of the chosen hand over two visits or more to draw; each carries the same as text. */
    public List<RangeTrend> trends() {
        return report.stream()
                .flatMap(shown -> shown.rangeTrends().stream())
                .filter(trend -> trend.side() == side && trend.steps().size() > 1)
                .toList();
    }

    /** Every measure of the chosen hand over two visits or more, as text. */
    public List<String> courses() {
        return report.stream()
                .flatMap(shown -> shown.trends().stream())
                .filter(trend -> trend.slot().side() == side && trend.points().size() > 1)
                .map(Trend::words)
                .toList();
    }

    /** A file name for the chosen visit, such as {@code arcsay-demo-07-visit-4.pdf}; "" when none is chosen. */
    public String fileName(Format format) {
        return report.map(shown -> shown.fileName(format.extension())).orElse("");
    }

    /** Writes the report of the chosen visit; afterwards {@link #message()} says what became of it. */
    public void export(Format format, Path file) {
        if (report.isEmpty()) {
            message = "Choose a visit first.";
            return;
        }
        try {
            writers.write(report.get(), format, file);
            message = "The report is in " + file + ". It holds health data; keep it where your record rules allow.";
        } catch (StoreException e) {
            message = String.valueOf(e.getMessage());
        }
    }
}
