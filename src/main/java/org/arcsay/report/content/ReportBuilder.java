package org.arcsay.report.content;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.arcsay.analysis.Comparison;
import org.arcsay.analysis.Rater;
import org.arcsay.analysis.Readings;
import org.arcsay.analysis.Total;
import org.arcsay.analysis.TotalDifference;
import org.arcsay.analysis.Totals;
import org.arcsay.model.Dimension;
import org.arcsay.model.Entry;
import org.arcsay.model.Measure;
import org.arcsay.model.Mode;
import org.arcsay.model.Severity;
import org.arcsay.model.Side;
import org.arcsay.model.Site;
import org.arcsay.model.Sites;
import org.arcsay.model.Slot;
import org.arcsay.model.Versions;
import org.arcsay.model.Visit;
import org.arcsay.report.content.EntryTrail.Decision;

/** Puts a report together from its source. Immutable, so any thread may use it. */
final class ReportBuilder {
    private static final List<Side> SIDES = List.of(Side.RIGHT, Side.LEFT);
    private static final List<Site> SITE_ORDER =
            Sites.standard().all().stream().map(Sites.Info::site).toList();
    private static final Comparator<Slot> CLINICAL_ORDER = Comparator.comparing(Slot::mode)
            .thenComparing(
                    slot -> isAngle(slot) ? 0 : 1 + slot.measure().dimension().ordinal())
            .thenComparing(slot -> SITE_ORDER.indexOf(slot.measure().site()))
            .thenComparing(slot -> slot.measure().motion());

    private final ReportSource source;
    private final VisitRecord current;
    private final List<Visit> visits;
    private final List<Visit> earlier;

    ReportBuilder(ReportSource source) {
        this.source = source;
        List<VisitRecord> records = source.visits();
        this.current = records.get(records.size() - 1);
        this.visits = records.stream().map(VisitRecord::visit).toList();
        this.earlier = visits.subList(0, visits.size() - 1);
    }

    Report build() {
        List<Row> rows = rows();
        Sections sections = new Sections(source, current, rows);
        return new Report(
                source,
                rows,
                totals(),
                trends(),
                SIDES.stream()
                        .flatMap(side -> JointRange.of(source, current.visit(), side).stream())
                        .toList(),
                SIDES.stream()
                        .flatMap(side -> RangeTrend.of(visits, side).stream())
                        .toList(),
                accepted(),
                sections.all(),
                Conventions.legend(source.settings().signConvention()),
                Conventions.basis(source.norms(), rows, source.yardstick()),
                sections.errors(),
                Conventions.CAUTIONS,
                versions());
    }

    private static boolean isAngle(Slot slot) {
        return slot.measure().dimension() == Dimension.ANGLE || slot.measure().dimension() == Dimension.EXTENSION;
    }

    private List<Row> rows() {
        return current.visit().counting().stream()
                .map(entry -> entry.reading().slot())
                .sorted(CLINICAL_ORDER)
                .map(slot -> row(slot.measure(), slot.mode()))
                .distinct()
                .toList();
    }

    private Row row(Measure measure, Mode mode) {
        return new Row(
                measure,
                mode,
                cell(new Slot(Side.LEFT, measure, mode)),
                cell(new Slot(Side.RIGHT, measure, mode)),
                source.norms().find(measure, mode));
    }

    private Cell cell(Slot slot) {
        return new Cell(
                current.visit().counting().stream()
                        .filter(entry -> entry.reading().slot().equals(slot))
                        .toList(),
                Comparison.of(slot, current.visit(), earlier, source.yardstick()));
    }

    private List<TotalLine> totals() {
        return SIDES.stream()
                .flatMap(side -> Stream.of(Mode.values())
                        .flatMap(mode -> Totals.standard().of(current.visit(), side, mode).stream()))
                .map(this::totalLine)
                .toList();
    }

    private TotalLine totalLine(Total total) {
        Total other = Totals.standard()
                .of(total.motion(), current.visit(), total.side().other(), total.mode());
        List<TotalLine.Past> past = earlier.stream()
                .map(visit -> new TotalLine.Past(
                        visit.startedAt(), Totals.standard().of(total.motion(), visit, total.side(), total.mode())))
                .filter(TotalLine.Past::complete)
                .toList();
        return new TotalLine(
                total,
                total.percentOf(other),
                TotalDifference.between(total, other, source.yardstick(), Rater.SAME),
                past.isEmpty() ? Optional.empty() : since(total, past.get(past.size() - 1)),
                past.stream().findFirst().flatMap(first -> since(total, first)),
                past.stream().reduce(TotalLine.Past::better).flatMap(best -> since(total, best)));
    }

    private Optional<TotalLine.Since> since(Total total, TotalLine.Past past) {
        return TotalDifference.between(
                        total,
                        past.total(),
                        source.yardstick(),
                        source.yardstick().rater())
                .map(difference -> new TotalLine.Since(past.at(), difference));
    }

    private List<Trend> trends() {
        return current.visit().counting().stream()
                .map(entry -> entry.reading().slot())
                .distinct()
                .sorted(Comparator.comparing((Slot slot) -> SIDES.indexOf(slot.side()))
                        .thenComparing(CLINICAL_ORDER))
                .map(slot -> new Trend(slot, points(slot)))
                .filter(trend -> !trend.points().isEmpty())
                .toList();
    }

    private List<Trend.Point> points(Slot slot) {
        return visits.stream()
                .flatMap(visit ->
                        Readings.last(visit, slot).map(reading -> new Trend.Point(visit.startedAt(), reading)).stream())
                .toList();
    }

    private List<AcceptedFinding> accepted() {
        List<AcceptedFinding> accepted = new ArrayList<>();
        for (Entry entry : current.visit().counting()) {
            EntryTrail trail = current.trail(entry);
            Optional<Decision> decision = trail.accepted().or(trail::confirmed);
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
