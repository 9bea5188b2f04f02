package org.arcsay.analysis;

import static org.arcsay.analysis.Visits.flexion;
import static org.arcsay.analysis.Visits.lacks;
import static org.arcsay.analysis.Visits.neutral;
import static org.arcsay.analysis.Visits.reading;
import static org.arcsay.analysis.Visits.score;
import static org.arcsay.analysis.Visits.visit;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigDecimal;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import org.arcsay.analysis.Completeness.State;
import org.arcsay.model.Distance;
import org.arcsay.model.Finding;
import org.arcsay.model.Heard;
import org.arcsay.model.JournalEvent;
import org.arcsay.model.LengthUnit;
import org.arcsay.model.Measure;
import org.arcsay.model.Mode;
import org.arcsay.model.Motion;
import org.arcsay.model.Reading;
import org.arcsay.model.Severity;
import org.arcsay.model.Side;
import org.arcsay.model.Sites;
import org.arcsay.model.Slot;
import org.arcsay.model.Value;
import org.arcsay.model.Value.NotTestedReason;
import org.arcsay.model.Versions;
import org.arcsay.model.Visit;
import org.arcsay.tables.TableException;
import org.junit.jupiter.api.Test;

class CompletenessTest {
    private static final SeriesPlan SHORT =
            SeriesPlans.standard().named("thumb-short").orElseThrow();

    private static Completeness right(Reading... readings) {
        return Completeness.of(SHORT, visit(readings), Side.RIGHT);
    }

    private static Reading untested(String measure, NotTestedReason reason) {
        return reading(measure, new Value.NotTested(reason));
    }

    @Test
    void emptyVisitLacksEverything() {
        Completeness completeness = right();
        assertEquals(7, completeness.missing().size());
        assertEquals(0, completeness.settled());
        assertEquals(7, completeness.required());
        assertEquals(
                Optional.of("right MP flexion, active"), completeness.next().map(Slot::words));
        assertFalse(completeness.complete());
    }

    @Test
    void orderIsFreeAndEverythingSettledIsComplete() {
        Completeness completeness = right(
                score(8),
                untested("CMC:PALMAR_ABDUCTION", NotTestedReason.SPLINT),
                reading("CMC:RADIAL_ABDUCTION", Value.Angle.of(50)),
                neutral("IP"),
                flexion("IP", "70"),
                neutral("MP"),
                flexion("MP", "50"));
        assertTrue(completeness.complete());
        assertEquals(7, completeness.settled());
        assertEquals(6, completeness.done().size());
        assertEquals(
                "right CMC palmar abduction, active: not tested: splint",
                completeness.notTested().get(0).words());
        assertEquals(Optional.empty(), completeness.next());
    }

    @Test
    void otherHandAndOtherModeDoNotSettle() {
        Completeness completeness = right(
                flexion("MP", "50").withSide(Side.LEFT), flexion("MP", "60").withMode(Mode.PASSIVE));
        assertEquals(7, completeness.missing().size());
    }

    @Test
    void missingReasonAndMissingNumberStayOpen() {
        Completeness completeness = right(
                untested("IP:FLEXION", NotTestedReason.UNSTATED),
                reading("MP:FLEXION", new Value.Unquantified(Value.Phrase.FULL)));
        assertEquals(State.NO_NUMBER, completeness.items().get(0).state());
        assertEquals(State.REASON_MISSING, completeness.items().get(2).state());
        assertTrue(completeness.items().get(2).words().endsWith("reason missing"));
        assertEquals(7, completeness.open().size());
        assertEquals(5, completeness.missing().size());
    }

    @Test
    void numberBeatsAnEarlierOrLaterExcuse() {
        assertEquals(
                State.DONE,
                right(flexion("MP", "50"), untested("MP:FLEXION", NotTestedReason.PAIN))
                        .items()
                        .get(0)
                        .state());
        assertEquals(
                State.DONE,
                right(untested("MP:FLEXION", NotTestedReason.PAIN), flexion("MP", "50"))
                        .items()
                        .get(0)
                        .state());
    }

    @Test
    void nextFollowsWhereTheTherapistIs() {
        Completeness completeness = right(flexion("IP", "70"), score(8));
        assertEquals(
                Optional.of("right IP extension, active"),
                completeness
                        .nextAfter(Measure.of("IP", Motion.FLEXION), Mode.ACTIVE)
                        .map(Slot::words));
        assertEquals(
                Optional.of("right MP flexion, active"),
                completeness
                        .nextAfter(Measure.of("thumb", Motion.OPPOSITION_SCORE), Mode.ACTIVE)
                        .map(Slot::words));
    }

    @Test
    void optionalStepsAreListedButNotWaitedFor() {
        SeriesPlan plan = SeriesPlans.standard().named("opposition").orElseThrow();
        Completeness empty = Completeness.of(plan, visit(), Side.LEFT);
        assertEquals(7, empty.missing().size());
        assertEquals(6, empty.required());
        assertEquals(6, empty.open().size());
    }

    @Test
    void plansUseKnownSitesAndPassiveCanBeLeftOut() {
        SeriesPlans.standard().all().stream()
                .flatMap(plan -> plan.steps().stream())
                .forEach(
                        step -> assertTrue(Sites.standard().knows(step.measure().site()), step.toString()));
        SeriesPlan full = SeriesPlans.standard().usual();
        assertEquals("thumb-full", full.id());
        assertTrue(full.steps().stream().anyMatch(step -> step.mode() == Mode.PASSIVE));
        assertTrue(full.without(Mode.PASSIVE).steps().stream().allMatch(step -> step.mode() == Mode.ACTIVE));
    }

    /** The ranges are those of the norm set that each run names; full contact and the highest score are normal. */
    @Test
    void recheckRepeatsOnlyWhatWasNotNormal() {
        NormSet norms = NormSets.standard().named("barakat-2013").orElseThrow();
        Visit earlier = visit(
                flexion("IP", "40"),
                flexion("MP", "20"),
                flexion("MP", "60"),
                untested("CMC:RADIAL_ABDUCTION", NotTestedReason.PAIN),
                reading("index tip:OPPOSITION_GAP", gap("0")),
                reading("little tip:OPPOSITION_GAP", gap("14")),
                reading("thumb:OPPOSITION_SCORE", new Value.Score(10)),
                flexion("MP", "10").withSide(Side.LEFT));
        assertEquals(
                List.of("IP:FLEXION", "little tip:OPPOSITION_GAP"),
                measures(SeriesPlan.recheck(earlier, Optional.of(Side.RIGHT), norms)));
        assertEquals(
                List.of("IP:FLEXION", "little tip:OPPOSITION_GAP", "MP:FLEXION"),
                measures(SeriesPlan.recheck(earlier, Optional.empty(), norms)));
    }

    private static Value gap(String millimetres) {
        return new Value.Gap(new Distance(new BigDecimal(millimetres), LengthUnit.MILLIMETRE));
    }

    private static List<String> measures(SeriesPlan plan) {
        return plan.steps().stream().map(step -> step.measure().id()).toList();
    }

    @Test
    void badPlanNamesItsLine() {
        String text =
                "plan\ttitle\tmeasure\tmode\tneed\tmark\tsource\nx\tX\tIP:FLEXION\tactive\tsometimes\tour default\ty\n";
        TableException refused = assertThrows(TableException.class, () -> SeriesPlans.read("own", text));
        assertEquals(
                "Line 2 of the table own cannot be used: 'need' must be required or optional.", refused.getMessage());
    }

    /** The set has no norm for the finger joints and the gaps; a mean alone is reached or not. */
    @Test
    void withoutARangeWhatIsFullOrReachesTheMeanIsNormal() {
        NormSet means = NormSets.standard().named("ama").orElseThrow();
        Visit earlier = visit(
                flexion("IP", "80"),
                flexion("MP", "59"),
                neutral("IP"),
                lacks("MP", "5"),
                reading("index tip:OPPOSITION_GAP", gap("0")),
                reading("ring tip:OPPOSITION_GAP", gap("1")),
                score(9));
        assertEquals(
                List.of("MP:FLEXION", "MP:EXTENSION", "ring tip:OPPOSITION_GAP", "thumb:OPPOSITION_SCORE"),
                measures(SeriesPlan.recheck(earlier, Optional.empty(), means)));
        assertEquals(List.of(), measures(SeriesPlan.recheck(visit(score(10)), Optional.empty(), means)));
    }

    @Test
    void ofTwoEntriesThatSettleEquallyTheLaterIsShown() {
        Completeness completeness = right(flexion("IP", "70"), flexion("IP", "72"));
        assertEquals(
                List.of("72 degrees"),
                completeness.done().stream()
                        .map(item ->
                                item.entry().orElseThrow().reading().value().words())
                        .toList());
    }

    @Test
    void whatWasAskedAboutIsDoubtfulUntilItIsConfirmed() {
        Visit asked = visit().apply(new JournalEvent.Taken(
                Visits.START,
                1,
                flexion("IP", "120"),
                List.of(),
                List.of(new Finding("limit", Severity.ASK, "Above the usual range.", List.of())),
                Heard.typed("typed", new Versions("g", "none", "r")),
                false,
                OptionalInt.empty(),
                "",
                ""));
        Visit confirmed = asked.apply(new JournalEvent.Confirmed(Visits.START, 1, "AK"));
        assertTrue(Completeness.of(SHORT, asked, Side.RIGHT).done().get(0).doubtful());
        assertFalse(Completeness.of(SHORT, confirmed, Side.RIGHT).done().get(0).doubtful());
    }
}
