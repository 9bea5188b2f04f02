package org.arcsay.analysis;

import static org.arcsay.analysis.Visits.START;
import static org.arcsay.analysis.Visits.flexion;
import static org.arcsay.analysis.Visits.gap;
import static org.arcsay.analysis.Visits.hyper;
import static org.arcsay.analysis.Visits.lacks;
import static org.arcsay.analysis.Visits.neutral;
import static org.arcsay.analysis.Visits.reading;
import static org.arcsay.analysis.Visits.visit;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigDecimal;
import java.util.List;
import java.util.Optional;
import org.arcsay.analysis.Comparison.Yardstick;
import org.arcsay.analysis.Difference.Trend;
import org.arcsay.analysis.Difference.Verdict;
import org.arcsay.model.LengthUnit;
import org.arcsay.model.Reading;
import org.arcsay.model.Side;
import org.arcsay.model.Value;
import org.arcsay.model.Visit;
import org.junit.jupiter.api.Test;

class ComparisonTest {
    private static final Yardstick SAME_RATER =
            new Yardstick(MeasurementError.standard(), Rater.SAME, ErrorFigure.Confidence.NINETY_FIVE);

    private static Visit earlier(int week, Reading... readings) {
        return visit(week, START.minusWeeks(10 - week), readings);
    }

    private static Comparison compare(Visit now, Visit... earlier) {
        return Comparison.of(now.entries().get(0).reading().slot(), now, List.of(earlier), SAME_RATER);
    }

    @Test
    void lastFirstAndBestAreFound() {
        Comparison comparison = compare(
                visit(flexion("IP", "60")),
                earlier(1, flexion("IP", "20")),
                earlier(2, flexion("IP", "70")),
                earlier(3, flexion("IP", "55")),
                earlier(4, flexion("MP", "10")));
        assertEquals("40", comparison.first().orElseThrow().change().toPlainString());
        assertEquals("-10", comparison.best().orElseThrow().change().toPlainString());
        assertEquals("5", comparison.last().orElseThrow().change().toPlainString());
        assertEquals(START.minusWeeks(7), comparison.last().orElseThrow().thenAt());
        assertEquals(Optional.empty(), comparison.otherHand());
    }

    @Test
    void visitsNeedNotBeInOrder() {
        Comparison comparison =
                compare(visit(flexion("IP", "60")), earlier(3, flexion("IP", "55")), earlier(1, flexion("IP", "20")));
        assertEquals(
                "55 degrees", comparison.last().orElseThrow().then().value().words());
    }

    @Test
    void exactlyTheThresholdIsWithin() {
        Difference five = compare(visit(flexion("IP", "60")), earlier(1, flexion("IP", "55")))
                .last()
                .orElseThrow();
        Difference more = compare(visit(flexion("IP", "60")), earlier(1, flexion("IP", "54.5")))
                .last()
                .orElseThrow();
        assertEquals(Verdict.WITHIN, five.verdict());
        assertEquals(Verdict.BEYOND, more.verdict());
        assertEquals("5 degrees more than 55 degrees, within measurement error (5 degrees)", five.words());
        assertTrue(five.threshold().orElseThrow().words().startsWith("5 degrees, 95 %, same rater, our default"));
    }

    @Test
    void ratersAndConfidenceChangeTheThreshold() {
        Visit now = visit(flexion("IP", "60"));
        Visit then = earlier(1, flexion("IP", "51"));
        Yardstick ninety = new Yardstick(MeasurementError.standard(), Rater.DIFFERENT, ErrorFigure.Confidence.NINETY);
        Difference cautious = Comparison.of(
                        now.entries().get(0).reading().slot(), now, List.of(then), Yardstick.cautious())
                .last()
                .orElseThrow();
        Difference atNinety = Comparison.of(now.entries().get(0).reading().slot(), now, List.of(then), ninety)
                .last()
                .orElseThrow();
        assertEquals(Verdict.WITHIN, cautious.verdict());
        assertEquals(Verdict.BEYOND, atNinety.verdict());
        assertTrue(atNinety.words().contains("(8.4 degrees)"), atNinety.words());
    }

    @Test
    void otherHandOfTheSameVisitIsOneRater() {
        Visit now = visit(flexion("IP", "60"), flexion("IP", "66").withSide(Side.LEFT));
        Difference other = Comparison.of(now.entries().get(0).reading().slot(), now, List.of(), Yardstick.cautious())
                .otherHand()
                .orElseThrow();
        assertEquals(Verdict.BEYOND, other.verdict());
        assertEquals(Trend.WORSE, other.trend());
        assertEquals(Side.LEFT, other.then().side());
    }

    @Test
    void smallerGapIsBetterAndUnitsAreConverted() {
        Difference difference = compare(
                        visit(gap("little tip", "1.2", LengthUnit.CENTIMETRE)),
                        earlier(1, gap("little tip", "20", LengthUnit.MILLIMETRE)))
                .best()
                .orElseThrow();
        assertEquals(Trend.BETTER, difference.trend());
        assertEquals("8 mm less than 20 mm, beyond measurement error (6 mm)", difference.words());
    }

    @Test
    void bestGapIsTheSmallest() {
        Comparison comparison = compare(
                visit(gap("little tip", "9", LengthUnit.MILLIMETRE)),
                earlier(1, gap("little tip", "20", LengthUnit.MILLIMETRE)),
                earlier(2, gap("little tip", "5", LengthUnit.MILLIMETRE)),
                earlier(3, gap("little tip", "12", LengthUnit.MILLIMETRE)));
        assertEquals("5 mm", comparison.best().orElseThrow().then().value().words());
    }

    @Test
    void extensionIsBetterUpToNeutralOnly() {
        Difference gain = compare(visit(lacks("IP", "10")), earlier(1, lacks("IP", "20")))
                .last()
                .orElseThrow();
        assertEquals(Trend.BETTER, gain.trend());
        assertEquals("10 degrees straighter than lacks 20 degrees, beyond measurement error (5 degrees)", gain.words());
        assertEquals(
                Trend.NEITHER,
                compare(visit(hyper("IP", "10")), earlier(1, neutral("IP")))
                        .last()
                        .orElseThrow()
                        .trend());
        assertEquals(
                Trend.BETTER,
                compare(visit(hyper("IP", "10")), earlier(1, lacks("IP", "1")))
                        .last()
                        .orElseThrow()
                        .trend());
        Comparison best = compare(
                visit(neutral("IP")),
                earlier(1, hyper("IP", "30")),
                earlier(2, neutral("IP")),
                earlier(3, lacks("IP", "5")));
        assertEquals(
                "reaches neutral, 0 degrees",
                best.best().orElseThrow().then().value().words());
        assertEquals(
                "the same, reaches neutral, 0 degrees, within measurement error (5 degrees)",
                best.best().orElseThrow().words());
        assertEquals(Trend.SAME, best.best().orElseThrow().trend());
    }

    @Test
    void unknownErrorIsSaid() {
        Reading pronation = reading("wrist:PRONATION", Value.Angle.of(60));
        Visit now = visit(pronation);
        Difference difference = Comparison.of(
                        pronation.slot(),
                        now,
                        List.of(earlier(1, reading("wrist:PRONATION", Value.Angle.of(10)))),
                        Yardstick.cautious())
                .last()
                .orElseThrow();
        assertEquals(Verdict.UNKNOWN, difference.verdict());
        assertEquals("50 degrees more than 10 degrees, measurement error not known", difference.words());
    }

    @Test
    void trialsHaveMeanAndRange() {
        Visit now = visit(lacks("IP", "5"), neutral("IP"), hyper("IP", "1"));
        Trials trials = Trials.of(now, now.entries().get(0).reading().slot());
        assertEquals(3, trials.count());
        assertEquals(
                0,
                trials.mean()
                        .orElseThrow()
                        .number()
                        .subtract(new BigDecimal("-1.333333333333333"))
                        .signum());
        assertEquals("6 degrees", trials.range().orElseThrow().words());
        assertEquals(
                "hyperextends 1 degrees", trials.last().orElseThrow().value().words());
    }

    @Test
    void allSlotsAreComparedOnce() {
        Visit now = visit(flexion("IP", "60"), neutral("IP"), flexion("IP", "62"));
        assertEquals(2, Comparison.all(now, List.of(), SAME_RATER).size());
    }

    @Test
    void whatHasNoNumberIsNotCompared() {
        Visit now = visit(
                flexion("IP", "60"), Visits.reading("MP:FLEXION", new Value.NotTested(Value.NotTestedReason.PAIN)));
        assertEquals(1, Comparison.all(now, List.of(), SAME_RATER).size());
    }

    @Test
    void theOtherHandOfAnEarlierVisitCountsOnlyWhereThisOneHasNone() {
        Visit before = visit(1, Visits.START.minusWeeks(4), flexion("IP", "80").withSide(Side.LEFT));
        Visit later = visit(2, Visits.START.minusWeeks(2), flexion("IP", "78").withSide(Side.LEFT));
        Visit now = visit(flexion("IP", "60"));
        Difference known = Comparison.all(now, List.of(later, before), SAME_RATER)
                .get(0)
                .otherHandBefore()
                .orElseThrow();
        assertEquals(Visits.START.minusWeeks(2), known.thenAt());
        assertEquals("18 degrees less than 78 degrees", known.words().split(",")[0]);
        Visit both = visit(flexion("IP", "60"), flexion("IP", "75").withSide(Side.LEFT));
        Comparison beside =
                Comparison.all(both, List.of(before, later), SAME_RATER).get(0);
        assertTrue(beside.otherHandBefore().isEmpty());
        assertEquals(
                "75 degrees", beside.otherHand().orElseThrow().then().value().words());
    }
}
