package org.arcsay.report.content;

import java.util.List;
import java.util.stream.Stream;
import org.arcsay.model.Side;
import org.arcsay.model.Sites;
import org.arcsay.model.Versions;

/**
 * Everything that any format says about one visit and those before it.
 *
 * @param source what it was made from
 * @param rows the series of the reported visit, one row a measure and mode, in clinical order
 * @param totals total motion of each hand and mode, right hand first
 * @param trends every slot of the series over the visits
 * @param ranges the joints of both hands in the reported visit, for drawing, right hand first
 * @param rangeTrends joints and total motion over the visits, for drawing, right hand first
 * @param accepted findings that were asked about, and how they were settled
 * @param sections what there is beyond the series: protocol, completeness, opposition, arcs, trials, first and best visit
 * @param legend how directions are written, one sentence each
 * @param basis where norms and measurement error come from, one sentence each
 * @param errors the figures of measurement error of every measure of the series, with their source
 * @param cautions what a reader has to bear in mind, one sentence each
 * @param versions the versions that produced the entries of the reported visit, each once
 */
public record Report(
        ReportSource source,
        List<Row> rows,
        List<TotalLine> totals,
        List<Trend> trends,
        List<JointRange> ranges,
        List<RangeTrend> rangeTrends,
        List<AcceptedFinding> accepted,
        List<Section> sections,
        List<String> legend,
        List<String> basis,
        List<String> errors,
        List<String> cautions,
        List<Versions> versions) {
    public Report {
        rows = List.copyOf(rows);
        totals = List.copyOf(totals);
        trends = List.copyOf(trends);
        ranges = List.copyOf(ranges);
        rangeTrends = List.copyOf(rangeTrends);
        accepted = List.copyOf(accepted);
        sections = List.copyOf(sections);
        legend = List.copyOf(legend);
        basis = List.copyOf(basis);
        errors = List.copyOf(errors);
        cautions = List.copyOf(cautions);
        versions = List.copyOf(versions);
    }

    /** The report of the last of these visits. */
    public static Report of(ReportSource source) {
        return new ReportBuilder(source).build();
    }

    /** The visit that is reported. */
    public VisitRecord current() {
        return source.visits().get(source.visits().size() - 1);
    }

    /** How far the report as a whole may be relied on. */
    public Standing standing() {
        return current().standing();
    }

    /** A name for the file, such as {@code arcsay-demo-07-visit-4.pdf}. */
    public String fileName(String extension) {
        return "arcsay-" + current().visit().patient() + "-visit-"
                + current().visit().id() + "." + extension;
    }

    /** "thumb" where nothing but the thumb was measured, otherwise "hand". */
    public String part() {
        return rows.stream()
                        .map(row -> Sites.standard().info(row.measure().site()).ray())
                        .allMatch("thumb"::equals)
                ? "thumb"
                : "hand";
    }

    /** The hands that have readings in the reported visit, right hand first. */
    public List<Side> sides() {
        return Stream.of(Side.RIGHT, Side.LEFT)
                .filter(side -> rows.stream().anyMatch(row -> !row.cell(side).isEmpty()))
                .toList();
    }
}
