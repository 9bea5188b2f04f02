package org.arcsay.report.content;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.arcsay.model.Entry;
import org.arcsay.model.Measure;
import org.arcsay.model.Mode;
import org.arcsay.model.Severity;
import org.arcsay.model.Side;
import org.arcsay.model.Site;
import org.arcsay.model.Sites;
import org.arcsay.model.Slot;
import org.arcsay.model.Versions;
import org.arcsay.report.content.EntryTrail.Decision;

/** Puts a report together from its source. Immutable, so any thread may use it. */
final class ReportBuilder {
    private static final List<Site> SITE_ORDER =
            Sites.standard().all().stream().map(Sites.Info::site).toList();
    private static final Comparator<Row> CLINICAL_ORDER = Comparator.<Row, Mode>comparing(Row::mode)
            .thenComparing(row -> SITE_ORDER.indexOf(row.measure().site()))
            .thenComparing(row -> row.measure().motion());

    private final ReportSource source;
    private final VisitRecord current;

    ReportBuilder(ReportSource source) {
        this.source = source;
        this.current = source.visits().get(source.visits().size() - 1);
    }

    Report build() {
        return new Report(
                source.program(),
                source.createdAt(),
                source.settings(),
                source.visits(),
                rows(),
                accepted(),
                Conventions.legend(source.settings().signConvention()),
                Conventions.CAUTIONS,
                versions());
    }

    private List<Row> rows() {
        return current.visit().counting().stream()
                .map(entry -> entry.reading().slot())
                .map(slot -> row(slot.measure(), slot.mode()))
                .distinct()
                .sorted(CLINICAL_ORDER)
                .toList();
    }

    private Row row(Measure measure, Mode mode) {
        return new Row(
                measure, mode, cell(new Slot(Side.LEFT, measure, mode)), cell(new Slot(Side.RIGHT, measure, mode)));
    }

    private Cell cell(Slot slot) {
        return new Cell(current.visit().counting().stream()
                .filter(entry -> entry.reading().slot().equals(slot))
                .toList());
    }

    private List<AcceptedFinding> accepted() {
        List<AcceptedFinding> accepted = new ArrayList<>();
        for (Entry entry : current.visit().counting()) {
            EntryTrail trail = current.trail(entry);
            Optional<Decision> decision = Stream.of(trail.accepted(), trail.confirmed())
                    .flatMap(Optional::stream)
                    .findFirst();
            entry.findings().stream()
                    .filter(finding -> finding.severity() != Severity.NOTE)
                    .map(finding -> new AcceptedFinding(
                            entry,
                            finding,
                            decision.map(Decision::by).orElse(""),
                            decision.map(Decision::why).orElse(""),
                            decision.isPresent()))
                    .forEach(accepted::add);
        }
        return accepted;
    }

    private List<Versions> versions() {
        return current.visit().counting().stream()
                .map(entry -> entry.heard().versions())
                .distinct()
                .toList();
    }
}
