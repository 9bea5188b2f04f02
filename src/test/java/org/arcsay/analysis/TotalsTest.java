package org.arcsay.analysis;

import static org.arcsay.analysis.Visits.flexion;
import static org.arcsay.analysis.Visits.hyper;
import static org.arcsay.analysis.Visits.lacks;
import static org.arcsay.analysis.Visits.neutral;
import static org.arcsay.analysis.Visits.reading;
import static org.arcsay.analysis.Visits.visit;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigDecimal;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import org.arcsay.analysis.Comparison.Yardstick;
import org.arcsay.model.Heard;
import org.arcsay.model.JournalEvent;
import org.arcsay.model.Mode;
import org.arcsay.model.Reading;
import org.arcsay.model.Side;
import org.arcsay.model.Value;
import org.arcsay.model.Versions;
import org.arcsay.model.Visit;
import org.arcsay.tables.Table;
import org.arcsay.tables.TableException;
import org.junit.jupiter.api.Test;

class TotalsTest {
    private static Total thumb(Reading... readings) {
        return thumb(visit(readings));
    }

    private static Total thumb(Visit visit) {
        return Totals.standard().of(Totals.standard().motion("thumb"), visit, Side.RIGHT, Mode.ACTIVE);
    }

    @Test
    void missingPartIsNeverCountedAsZero() {
        Total total = thumb(flexion("MP", "50"), neutral("MP"), flexion("IP", "65"));
        assertEquals(Optional.empty(), total.degrees());
        assertEquals(Optional.empty(), total.grade());
        assertEquals(
                List.of("right IP extension, active"),
                total.missing().stream().map(slot -> slot.words()).toList());
    }

    @Test
    void notTestedAndWordsOnlyLeaveTheTotalIncomplete() {
        Reading untested = reading("IP:EXTENSION", new Value.NotTested(Value.NotTestedReason.PAIN));
        Reading full = reading("IP:FLEXION", new Value.Unquantified(Value.Phrase.FULL));
        assertEquals(
                2,
                thumb(flexion("MP", "50"), neutral("MP"), untested, full)
                        .missing()
                        .size());
    }

    @Test
    void otherSideAndModeDoNotCount() {
        Total total = thumb(
                flexion("MP", "50").withSide(Side.LEFT),
                neutral("MP"),
                flexion("IP", "65").withMode(Mode.PASSIVE),
                neutral("IP"));
        assertEquals(2, total.missing().size());
    }

    @Test
    void lastTrialStandsForTheVisit() {
        Total total =
                thumb(flexion("MP", "40"), neutral("MP"), flexion("IP", "65"), neutral("IP"), flexion("MP", "50"));
        assertEquals(Optional.of(new BigDecimal("115")), total.degrees());
    }

    @Test
    void heldEntryIsNotComputedWith() {
        Visit visit = visit(flexion("MP", "50"), neutral("MP"), flexion("IP", "65"));
        Visit held = visit.apply(new JournalEvent.Taken(
                visit.startedAt(),
                4,
                neutral("IP"),
                List.of(),
                List.of(),
                Heard.typed("typed", new Versions("g", "none", "r")),
                true,
                OptionalInt.empty(),
                "",
                ""));
        assertEquals(1, thumb(held).missing().size());
        Visit released = held.apply(new JournalEvent.Released(visit.startedAt(), 4, "", ""));
        assertEquals(Optional.of(new BigDecimal("115")), thumb(released).degrees());
    }

    @Test
    void percentOfTheOtherHand() {
        Visit visit = visit(
                flexion("MP", "50"),
                neutral("MP"),
                flexion("IP", "40"),
                lacks("IP", "10"),
                flexion("MP", "60").withSide(Side.LEFT),
                neutral("MP").withSide(Side.LEFT),
                flexion("IP", "60").withSide(Side.LEFT),
                hyper("IP", "20").withSide(Side.LEFT));
        Totals totals = Totals.standard();
        Total left = totals.of(totals.motion("thumb"), visit, Side.LEFT, Mode.ACTIVE);
        assertEquals("80", thumb(visit).degrees().orElseThrow().toPlainString());
        assertEquals(
                "66.7", thumb(visit).percentOf(left).orElseThrow().rounded(1).toPlainString());
        assertTrue(left.hyperextends());
        assertFalse(thumb(visit).hyperextends());
        assertEquals(
                List.of("thumb"),
                totals.of(visit, Side.LEFT, Mode.ACTIVE).stream()
                        .map(t -> t.motion().id())
                        .toList());
        assertEquals(List.of(), totals.of(visit, Side.LEFT, Mode.PASSIVE));
    }

    @Test
    void noPercentOfAnIncompleteOrEmptyOtherHand() {
        Total full = thumb(flexion("MP", "50"), neutral("MP"), flexion("IP", "40"), neutral("IP"));
        assertEquals(Optional.empty(), full.percentOf(thumb(flexion("MP", "50"))));
        Total nothing = thumb(flexion("MP", "0"), neutral("MP"), flexion("IP", "0"), neutral("IP"));
        assertEquals(Optional.empty(), full.percentOf(nothing));
    }

    @Test
    void fingerTotalIsDataOnly() {
        Total index = Totals.standard()
                .of(
                        Totals.standard().motion("index"),
                        visit(
                                flexion("index MP", "80"), neutral("index MP"),
                                flexion("index PIP", "90"), lacks("index PIP", "15"),
                                flexion("index DIP", "40"), neutral("index DIP")),
                        Side.RIGHT,
                        Mode.ACTIVE);
        assertEquals(Optional.of(new BigDecimal("195")), index.degrees());
        assertEquals("Fair", index.grade().orElseThrow().label());
        assertEquals("TAM", index.abbreviation());
    }

    @Test
    void totalsAreComparedWithTheErrorOfTheirParts() {
        Visit now = visit(flexion("MP", "50"), neutral("MP"), flexion("IP", "61"), neutral("IP"));
        Visit then = visit(flexion("MP", "50"), neutral("MP"), flexion("IP", "50"), neutral("IP"));
        Yardstick same = new Yardstick(MeasurementError.standard(), Rater.SAME, ErrorFigure.Confidence.NINETY_FIVE);
        TotalDifference difference = TotalDifference.between(thumb(now), thumb(then), same, Rater.SAME)
                .orElseThrow();
        assertEquals("11 degrees more than 100 degrees, beyond measurement error (10 degrees)", difference.words());
        assertEquals(
                Difference.Verdict.WITHIN,
                TotalDifference.between(thumb(now), thumb(then), same, Rater.DIFFERENT)
                        .orElseThrow()
                        .verdict());
        assertEquals(
                Optional.empty(), TotalDifference.between(thumb(now), thumb(flexion("IP", "1")), same, Rater.SAME));
    }

    @Test
    void differentTotalsAreNotCompared() {
        Totals totals = Totals.standard();
        Visit visit = visit(flexion("MP", "50"));
        Total passive = totals.of(totals.motion("thumb"), visit, Side.RIGHT, Mode.PASSIVE);
        assertEquals("TPM", passive.abbreviation());
        assertThrows(
                IllegalArgumentException.class,
                () -> TotalDifference.between(thumb(visit), passive, Yardstick.cautious(), Rater.SAME));
        assertThrows(IllegalArgumentException.class, () -> totals.motion("toe"));
    }

    @Test
    void scaleWithoutOpenLastBandIsRefused() {
        String text =
                "scale\ttitle\tlabel\tbound\tpercent\tmark\tsource\nx\tX\tGood\tat least\t50\tour default\ttest\n";
        assertThrows(IllegalArgumentException.class, () -> GradeScale.read(Table.read("own", text)));
        assertThrows(TableException.class, () -> MeasurementError.read("own", "measure\tmode\n*:X\tany\n"));
    }

    @Test
    void percentIsComparedBeforeItIsRounded() {
        Percent almost = new Percent(new BigDecimal("84.96"), new BigDecimal("100"));
        assertEquals("85.0 % of 100 degrees", almost.words());
        assertEquals(
                "Good", Totals.standard().motion("thumb").scale().grade(almost).label());
        assertThrows(IllegalArgumentException.class, () -> new Percent(BigDecimal.ONE, BigDecimal.ZERO));
    }
}
