package org.arcsay.report.content;

import java.math.BigDecimal;
import java.time.OffsetDateTime;
import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.arcsay.analysis.Arc;
import org.arcsay.analysis.Total;
import org.arcsay.analysis.TotalMotion;
import org.arcsay.analysis.Totals;
import org.arcsay.model.Mode;
import org.arcsay.model.Side;
import org.arcsay.model.Site;
import org.arcsay.model.Visit;

/**
 * A range over the visits, for drawing.
 *
 * @param side the hand
 * @param title what is drawn
 * @param steps visits in which it was measured completely, oldest first, at least one
 * @param reference a level in degrees to compare with, if there is one
 * @param referenceWords what that level is, or ""
 */
public record RangeTrend(
        Side side, String title, List<Step> steps, Optional<BigDecimal> reference, String referenceWords) {
    public RangeTrend {
        steps = List.copyOf(steps);
    }

    /**
     * One visit.
     *
     * @param at when the visit began
     * @param range the range then
     */
    public record Step(OffsetDateTime at, DegreeRange range) {
        String words() {
            return DateTimeFormatter.ISO_LOCAL_DATE.format(at) + " " + range.words();
        }
    }

    /** The same as text: every visit, or the first and the last ones when there are many. */
    public String words() {
        return title + ": " + Shortened.join(steps.stream().map(Step::words).toList());
    }

    /** The active ranges of the thumb's joints and its total active motion. */
    static List<RangeTrend> of(List<Visit> visits, Side side) {
        return Stream.of(joint(visits, "MP", side), joint(visits, "IP", side), total(visits, side))
                .filter(trend -> !trend.steps().isEmpty())
                .toList();
    }

    private static RangeTrend joint(List<Visit> visits, String site, Side side) {
        List<Step> steps = visits.stream()
                .flatMap(visit -> arc(visit, site, side).map(arc -> new Step(visit.startedAt(), range(arc))).stream())
                .toList();
        Optional<BigDecimal> other = visits.stream()
                .flatMap(visit -> arc(visit, site, side.other()).stream())
                .reduce((older, newer) -> newer)
                .map(arc -> arc.flexion().degrees());
        String words = other.map(degrees -> side.other().word() + " flexion " + degrees.toPlainString() + " degrees")
                .orElse("");
        return new RangeTrend(side, site + ", active range", steps, other, words);
    }

    private static Optional<Arc> arc(Visit visit, String site, Side side) {
        return Arc.of(visit, side, new Site(site), Mode.ACTIVE);
    }

    private static DegreeRange range(Arc arc) {
        return new DegreeRange(
                arc.extension().beyondNeutral().negate(), arc.flexion().degrees());
    }

    private static RangeTrend total(List<Visit> visits, Side side) {
        TotalMotion motion = Totals.standard().motion("thumb");
        List<Step> steps = visits.stream()
                .flatMap(visit -> step(visit, Totals.standard().of(motion, visit, side, Mode.ACTIVE)).stream())
                .toList();
        String words = "full motion " + motion.reference().toPlainString() + " degrees";
        return new RangeTrend(side, "Total active motion (TAM)", steps, Optional.of(motion.reference()), words);
    }

    private static Optional<Step> step(Visit visit, Total total) {
        return total.degrees().map(sum -> new Step(visit.startedAt(), new DegreeRange(BigDecimal.ZERO, sum)));
    }
}
