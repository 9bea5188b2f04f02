package org.arcsay.validate;

import static org.arcsay.analysis.Visits.START;
import static org.arcsay.analysis.Visits.flexion;
import static org.arcsay.analysis.Visits.gap;
import static org.arcsay.analysis.Visits.hyper;
import static org.arcsay.analysis.Visits.lacks;
import static org.arcsay.analysis.Visits.reading;
import static org.arcsay.analysis.Visits.visit;
import static org.arcsay.model.LengthUnit.CENTIMETRE;
import static org.arcsay.model.LengthUnit.MILLIMETRE;
import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import org.arcsay.analysis.MeasurementError;
import org.arcsay.analysis.Visits;
import org.arcsay.model.Distance;
import org.arcsay.model.Finding;
import org.arcsay.model.Measure;
import org.arcsay.model.Mode;
import org.arcsay.model.Motion;
import org.arcsay.model.PatientProtocol;
import org.arcsay.model.PatientProtocol.RangeLimit;
import org.arcsay.model.Reading;
import org.arcsay.model.Severity;
import org.arcsay.model.Side;
import org.arcsay.model.Value;
import org.arcsay.model.Visit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Rules exactly at their bounds, and what they do with readings that carry no number. */
class RuleEdgesTest {
    private static final Validator VALIDATOR = Validator.standard();

    private static List<Finding> all(String rule, Reading reading, History history, Reading... before) {
        return VALIDATOR.judge(reading, visit(before), history).stream()
                .filter(finding -> finding.rule().equals(rule))
                .toList();
    }

    private static Optional<Finding> found(String rule, Reading reading, Reading... before) {
        return all(rule, reading, History.none(), before).stream().findFirst();
    }

    private static History last(Reading... readings) {
        return History.of(List.of(visit(1, START.minusWeeks(2), readings)));
    }

    private static Reading left(Reading reading) {
        return reading.withSide(Side.LEFT);
    }

    @ParameterizedTest
    @CsvSource({
        "12, 21", "13, 30", "14, 40", "15, 50", "16, 60", "17, 70", "18, 80", "19, 90", "20, ", "21, 12", "30, 13",
        "90, 19", "40, 14", "10, ", "22, ", "45, 54", "99, ", "98, 89", "101, ", "100, ", "9, "
    })
    void everyTeenAndTyHasItsPartnerAndOtherNumbersTheirExchangedDigits(String said, String partner) {
        assertThat(SoundAlikes.partners(Value.Angle.of(said)).stream().findFirst())
                .isEqualTo(Optional.ofNullable(partner).map(Value.Angle::of));
    }

    @ParameterizedTest
    @CsvSource({"7.9, 0", "8, 1", "12.5, 1", "12.6, 0"})
    void aTenfoldSlipIsAskedFromEightToTwelveAndAHalfTimesTheNeighbour(String centimetres, int findings) {
        assertThat(all(
                        "series.tenfold",
                        gap("middle tip", centimetres, CENTIMETRE),
                        History.none(),
                        gap("ring tip", "1", CENTIMETRE)))
                .hasSize(findings);
    }

    @Test
    void touchingIsNoTenthOfAnythingAndNoNeighbour() {
        assertThat(found("series.tenfold", gap("middle tip", "0", MILLIMETRE), gap("ring tip", "0", MILLIMETRE)))
                .isEmpty();
        assertThat(found(
                        "series.tenfold",
                        gap("middle tip", "300", MILLIMETRE),
                        gap("index tip", "0", MILLIMETRE),
                        gap("ring tip", "30", MILLIMETRE)))
                .as("the gap of 0 is passed over")
                .isPresent();
    }

    @Test
    void theClosestMeasuredTargetsOnBothSidesAreTheNeighbours() {
        Reading[] before = {
            gap("index tip", "300", MILLIMETRE),
            gap("middle tip", "30", MILLIMETRE),
            gap("little tip", "32", MILLIMETRE),
            gap("little base", "320", MILLIMETRE)
        };
        Finding finding = found("series.tenfold", gap("ring tip", "310", MILLIMETRE), before)
                .orElseThrow();
        assertThat(finding.sentence()).contains("about ten times the gap to middle tip (30 mm)");
        List<Reading> reversed = new ArrayList<>(Arrays.asList(before));
        Collections.reverse(reversed);
        assertThat(found("series.tenfold", gap("ring tip", "310", MILLIMETRE), reversed.toArray(Reading[]::new)))
                .as("whatever the order of measuring")
                .hasValueSatisfying(same -> assertThat(same.sentence()).isEqualTo(finding.sentence()));
        assertThat(finding.alternative())
                .hasValueSatisfying(value -> assertThat(value.words()).isEqualTo("31 mm"));
        assertThat(finding.sentence()).contains("31 mm meant?");
    }

    @Test
    void gapsOfTheOtherModeOrHandAreNoNeighbours() {
        Reading wrong = gap("ring tip", "300", MILLIMETRE);
        assertThat(found(
                        "series.tenfold",
                        wrong,
                        gap("middle tip", "30", MILLIMETRE).withMode(Mode.PASSIVE)))
                .isEmpty();
        assertThat(found("series.tenfold", wrong, left(gap("middle tip", "30", MILLIMETRE))))
                .isEmpty();
        assertThat(found("series.tenfold", wrong, gap("middle tip", "30", MILLIMETRE)))
                .isPresent();
    }

    @Test
    void webSpaceIsNoPartOfTheGapSeries() {
        Reading span = reading("thumb:WEB_SPAN", new Value.Span(Distance.of("4", CENTIMETRE)));
        assertThat(found("series.mixed-units", gap("ring tip", "30", MILLIMETRE), span))
                .isEmpty();
    }

    @Test
    void anotherUnitOffersTheSameNumberInTheUnitOfTheSeries() {
        Finding finding = found(
                        "series.mixed-units", gap("ring tip", "3", CENTIMETRE), gap("middle tip", "25", MILLIMETRE))
                .orElseThrow();
        assertThat(finding.alternative())
                .hasValueSatisfying(value -> assertThat(value.words()).isEqualTo("3 mm"));
    }

    @ParameterizedTest
    @CsvSource({"15, 25, 0", "15, 26, 1"})
    void aFartherTargetThatIsNearerIsNotedAboveTenMillimetres(String farther, String nearer, int findings) {
        Reading far = gap("ring tip", farther, MILLIMETRE);
        Reading near = gap("index tip", nearer, MILLIMETRE);
        assertThat(all("series.nearer-target", far, History.none(), near)).hasSize(findings);
        assertThat(all("series.nearer-target", near, History.none(), far)).hasSize(findings);
    }

    @ParameterizedTest
    @CsvSource({"75, 60, ", "75.5, 60, 20", "80, 60, 20", "80.5, 60, 100"})
    void differencesOfTheHandsAreNotedAboveTheLimitsOfTheTable(String here, String there, String oneIn) {
        Optional<Finding> finding = found("side.difference", flexion("IP", here), left(flexion("IP", there)));
        assertThat(finding.map(Finding::severity))
                .isEqualTo(Optional.ofNullable(oneIn).map(known -> Severity.NOTE));
        finding.ifPresent(known -> {
            assertThat(known.sentence()).contains("1 healthy person in " + oneIn + " exceeds");
            assertThat(known.numbers().get(2).number()).isEqualTo(oneIn.equals("100") ? "20" : "15");
        });
    }

    @ParameterizedTest
    @CsvSource({"75, 60, 0", "75.5, 60, 1"})
    void theHandUnderTreatmentIsNamedWhenItIsTheBetterOne(String treated, String other, int findings) {
        History history = History.none().with(PatientProtocol.none().involving(Side.LEFT));
        List<Finding> found = all("side.uninvolved-worse", left(flexion("IP", treated)), history, flexion("IP", other));
        assertThat(found).hasSize(findings);
        found.forEach(finding -> assertThat(finding.sentence()).contains("the left hand is under treatment"));
        all("side.uninvolved-worse", flexion("IP", other), history, left(flexion("IP", treated)))
                .forEach(finding -> assertThat(finding.sentence()).contains("the left hand is under treatment"));
    }

    @ParameterizedTest
    @CsvSource({"50, 0", "51, 1"})
    void aValueIsTakenForTheOtherHandsOnlyBeyondTwiceTheErrorAndWithinItThere(String now, int findings) {
        assertThat(all(
                        "side.fits-other-hand",
                        flexion("IP", now),
                        last(flexion("IP", "30"), left(flexion("IP", "60")))))
                .hasSize(findings);
    }

    @Test
    void atTheErrorOfTheOtherHandItStillFitsAndBeyondItNoMore() {
        History history = last(flexion("IP", "20"), left(flexion("IP", "60")));
        assertThat(all("side.fits-other-hand", flexion("IP", "50"), history)).hasSize(1);
        assertThat(all("side.fits-other-hand", flexion("IP", "49"), history)).isEmpty();
    }

    @Test
    void neutralIsOnNeitherSideOfNeutral() {
        assertThat(all("history.sign-flip", Visits.neutral("IP"), last(lacks("IP", "30"))))
                .isEmpty();
        assertThat(all("history.sign-flip", lacks("IP", "30"), last(Visits.neutral("IP"))))
                .isEmpty();
        assertThat(all("history.sign-flip", lacks("IP", "30"), last(lacks("IP", "10"))))
                .isEmpty();
        assertThat(all("history.sign-flip", lacks("IP", "4"), last(hyper("IP", "4"))))
                .hasSize(1);
    }

    @Test
    void whatHasNoNumberIsNoKnownValue() {
        Reading untested = reading("IP:FLEXION", new Value.NotTested(Value.NotTestedReason.PAIN))
                .withMode(Mode.PASSIVE);
        assertThat(found("misheard.unchecked-teen", flexion("IP", "16"), untested))
                .isPresent();
        assertThat(found("misheard.fits-better", flexion("IP", "16"), untested)).isEmpty();
    }

    @Test
    void aTyThatSoundsLikeATeenIsNotNotedWithoutAReason() {
        assertThat(found("misheard.unchecked-teen", flexion("IP", "60"))).isEmpty();
        assertThat(found("misheard.unchecked-teen", flexion("IP", "13"))).isPresent();
        assertThat(found("misheard.unchecked-teen", flexion("IP", "12"))).isEmpty();
    }

    @Test
    void onlyTheOtherValueItSoundsLikeIsNamed() {
        assertThat(found("misheard.teen-ty-repeat", flexion("IP", "15"), flexion("IP", "52")))
                .isEmpty();
        assertThat(found("misheard.teen-ty-repeat", flexion("IP", "15"), flexion("IP", "52"), flexion("IP", "50")))
                .isPresent();
    }

    @Test
    void aLimitOffersAPartnerOnlyWithinItAndGivesItsAdvice() {
        Finding high = found("limit.high", reading("CMC:EXTENSION", Value.Angle.of(70)))
                .orElseThrow();
        assertThat(high.sentence()).contains("may be radial abduction under its other name");
        assertThat(high.alternative()).contains(Value.Angle.of(17));
        assertThat(found("limit.high", flexion("IP", "98")).orElseThrow().alternative())
                .as("89 is within the limit")
                .contains(Value.Angle.of(89));
        assertThat(found("limit.high", reading("CMC:EXTENSION", Value.Angle.of(65)))
                        .orElseThrow()
                        .alternative())
                .as("56 is above the limit of 40 as well")
                .isEmpty();
    }

    @Test
    void aCorrectionIsJudgedByAllRulesWithoutWhatItReplaces() {
        Visit visit = visit(flexion("IP", "60"));
        assertThat(VALIDATOR.judgeCorrection(flexion("IP", "140"), 1, visit, History.none()))
                .extracting(Finding::rule)
                .containsExactly("limit.high");
    }

    @Test
    void anyChangeOfAnyTableGivesTheRulesAnotherName() {
        RuleTables shipped = RuleTables.shipped();
        String line = "measure\tmode\trater\tbasis\tamount\tunit\tmark\tsource\nIP:FLEXION\tany\tsame\tSEM\t2\tdegrees"
                + "\tour default\tclinic\n";
        Validator own = Validator.with(shipped.with(MeasurementError.read("ours", line)));
        assertThat(own.version()).isNotEqualTo(Validator.with(shipped).version());
        assertThat(Validator.with(shipped.with(MeasurementError.read("ours", line.replace("\t2\t", "\t3\t"))))
                        .version())
                .isNotEqualTo(own.version());
        assertThat(own.version()).startsWith("rules-");
        assertThat(new Validator(List.of(new Repeat()), "").version())
                .as("the rules themselves count too")
                .isNotEqualTo(new Validator(List.of(new NoNumber()), "").version());
    }

    @Test
    void theClinicsOwnErrorDecidesWhatAJumpIs() {
        String table = "measure\tmode\trater\tbasis\tamount\tunit\tmark\tsource\n*:FLEXION\tany\tdifferent\tMDC95\t4\t"
                + "degrees\tour default\tmeasured in this clinic\n";
        Validator own = Validator.with(RuleTables.shipped().with(MeasurementError.read("ours", table)));
        History history = last(flexion("IP", "60"));
        assertThat(VALIDATOR.judge(flexion("IP", "70"), visit(), history)).isEmpty();
        assertThat(own.judge(flexion("IP", "70"), visit(), history))
                .extracting(Finding::rule)
                .containsExactly("history.jump");
    }

    @Test
    void onlyVisitsThatBeganBeforeAreHistoryAndTheOldestComesFirst() {
        Visit now = visit(9, START, flexion("IP", "60"));
        Visit before = visit(1, START.minusDays(1), flexion("IP", "50"));
        Visit earlier = visit(2, START.minusDays(9), flexion("IP", "40"));
        Visit later = visit(3, START.plusDays(1), flexion("IP", "70"));
        assertThat(History.before(now, List.of(later, before, now, earlier)).earlier())
                .containsExactly(earlier, before);
    }

    @Test
    void anEarlierTrialAtTheSameTargetIsNoNeighbour() {
        assertThat(found("series.tenfold", gap("ring tip", "300", MILLIMETRE), gap("ring tip", "30", MILLIMETRE)))
                .isEmpty();
        assertThat(found(
                        "series.tenfold",
                        gap("ring tip", "300", MILLIMETRE),
                        gap("ring tip", "300", MILLIMETRE),
                        gap("middle tip", "30", MILLIMETRE)))
                .isPresent();
    }

    @Test
    void ofTwoTrialsAtTheNeighbourTheLaterCounts() {
        assertThat(found(
                        "series.tenfold",
                        gap("ring tip", "300", MILLIMETRE),
                        gap("middle tip", "250", MILLIMETRE),
                        gap("middle tip", "30", MILLIMETRE)))
                .isPresent();
        assertThat(found(
                        "series.tenfold",
                        gap("ring tip", "300", MILLIMETRE),
                        gap("little tip", "30", MILLIMETRE),
                        gap("little tip", "250", MILLIMETRE)))
                .isEmpty();
    }

    @Test
    void askingAndHoldingMayBeginAtTheSameBound() {
        String header = "measure\tmode\tkind\task\thold\tunit\tadvice\tmark\tsource\n";
        assertThat(Limits.read("own", header + "IP:FLEXION\tany\tvalue\t80\t80\tdegrees\t-\tour default\ttest\n")
                        .lines())
                .hasSize(1);
    }

    /** Threshold 10 degrees. 16 may be 60 or, digits exchanged, 61; 17 may be 70 or 71. */
    @ParameterizedTest
    @CsvSource({"16, 70, true", "16, 71, true", "16, 72, false", "17, 60, true", "17, 59, false"})
    void aPartnerFitsUpToTheThresholdItself(String said, String known, boolean fits) {
        assertThat(!all("misheard.fits-better", flexion("IP", said), last(flexion("IP", known)))
                        .isEmpty())
                .isEqualTo(fits);
    }

    /** Moving beyond a protocol's limit may do harm, so that is asked before doubts of hearing. */
    @Test
    void aBrokenProtocolIsAskedFirst() {
        History history = last(flexion("IP", "60"))
                .with(PatientProtocol.none()
                        .limiting(new RangeLimit(
                                Measure.of("IP", Motion.FLEXION), Optional.of(Mode.ACTIVE), Value.Angle.of(40))));
        assertThat(VALIDATOR.judge(flexion("IP", "75"), visit(), history))
                .extracting(Finding::rule)
                .startsWith("protocol.range")
                .contains("misheard.fits-better");
    }
}
