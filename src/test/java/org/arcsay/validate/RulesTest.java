package org.arcsay.validate;

import static org.arcsay.analysis.Visits.START;
import static org.arcsay.analysis.Visits.flexion;
import static org.arcsay.analysis.Visits.gap;
import static org.arcsay.analysis.Visits.hyper;
import static org.arcsay.analysis.Visits.lacks;
import static org.arcsay.analysis.Visits.neutral;
import static org.arcsay.analysis.Visits.reading;
import static org.arcsay.analysis.Visits.score;
import static org.arcsay.analysis.Visits.visit;
import static org.arcsay.analysis.Visits.with;
import static org.arcsay.model.LengthUnit.CENTIMETRE;
import static org.arcsay.model.LengthUnit.MILLIMETRE;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Optional;
import org.arcsay.model.Finding;
import org.arcsay.model.Measure;
import org.arcsay.model.Mode;
import org.arcsay.model.Motion;
import org.arcsay.model.PatientProtocol;
import org.arcsay.model.PatientProtocol.RangeLimit;
import org.arcsay.model.Placement;
import org.arcsay.model.Reading;
import org.arcsay.model.Remark;
import org.arcsay.model.Severity;
import org.arcsay.model.Side;
import org.arcsay.model.Value;
import org.arcsay.model.Value.Angle;
import org.arcsay.model.Value.Extension;
import org.arcsay.model.Value.NotTestedReason;
import org.arcsay.model.Visit;
import org.arcsay.tables.TableException;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class RulesTest {
    private static final Validator VALIDATOR = Validator.standard();

    private static Optional<Finding> found(String rule, Reading reading, Visit visit, History history) {
        List<Finding> all = VALIDATOR.judge(reading, visit, history).stream()
                .filter(finding -> finding.rule().equals(rule))
                .toList();
        assertTrue(all.size() <= 1, all.toString());
        return all.stream().findFirst();
    }

    private static Optional<Finding> found(String rule, Reading reading, Reading... before) {
        return found(rule, reading, visit(before), History.none());
    }

    private static History after(Reading... last) {
        return History.of(List.of(visit(1, START.minusWeeks(2), last)));
    }

    private static Optional<Finding> afterVisit(String rule, Reading reading, Reading... last) {
        return found(rule, reading, visit(), after(last));
    }

    private static Optional<Severity> severity(Optional<Finding> finding) {
        return finding.map(Finding::severity);
    }

    private static List<String> numbers(Optional<Finding> finding) {
        return finding.orElseThrow().numbers().stream()
                .map(number -> number.label() + " " + number.number() + " " + number.unit())
                .toList();
    }

    private static Reading passive(Reading reading) {
        return reading.withMode(Mode.PASSIVE);
    }

    private static Reading left(Reading reading) {
        return reading.withSide(Side.LEFT);
    }

    @Nested
    class ActiveAndPassive {
        private static final String RULE = "active.beyond-passive";

        @Test
        void flexionMoreThanFiveBeyondPassiveIsAskedInEitherOrder() {
            Optional<Finding> active = found(RULE, flexion("IP", "66"), passive(flexion("IP", "60")));
            assertEquals(Optional.of(Severity.ASK), severity(active));
            assertEquals(List.of("active 66 degrees", "passive 60 degrees", "tolerance 5 degrees"), numbers(active));
            assertEquals(numbers(active), numbers(found(RULE, passive(flexion("IP", "60")), flexion("IP", "66"))));
        }

        @Test
        void fiveIsTolerated() {
            assertTrue(found(RULE, flexion("IP", "65"), passive(flexion("IP", "60")))
                    .isEmpty());
            assertTrue(found(RULE, flexion("IP", "50"), passive(flexion("IP", "60")))
                    .isEmpty());
            assertTrue(found(RULE, passive(flexion("IP", "80")), flexion("IP", "60"))
                    .isEmpty());
        }

        @Test
        void passiveDeficitBeyondActiveDeficitIsAsked() {
            assertTrue(
                    found(RULE, passive(lacks("IP", "16")), lacks("IP", "10")).isPresent());
            assertTrue(
                    found(RULE, passive(lacks("IP", "15")), lacks("IP", "10")).isEmpty());
            assertTrue(found(RULE, passive(lacks("IP", "4")), hyper("IP", "2")).isPresent());
        }

        @Test
        void otherHandAndOtherJointDoNotMatter() {
            assertTrue(found(RULE, flexion("IP", "80"), left(passive(flexion("IP", "60"))))
                    .isEmpty());
            assertTrue(found(RULE, flexion("IP", "80"), passive(flexion("MP", "60")))
                    .isEmpty());
            assertTrue(found(RULE, gap("little tip", "30", MILLIMETRE), passive(gap("little tip", "5", MILLIMETRE)))
                    .isEmpty());
        }
    }

    @Nested
    class FromTheLastVisit {
        @ParameterizedTest
        @CsvSource({"60, 80, ", "60, 80.5, ASK", "60, 40, ", "60, 39, ASK"})
        void changeOfMoreThanTwiceTheErrorIsAsked(String before, String now, Severity expected) {
            Optional<Finding> jump = afterVisit("history.jump", flexion("IP", now), flexion("IP", before));
            assertEquals(Optional.ofNullable(expected), severity(jump));
        }

        @Test
        void jumpNamesBothValuesAndTheLimit() {
            assertEquals(
                    List.of("now 90 degrees", "last visit 61 degrees", "limit 20 degrees"),
                    numbers(afterVisit("history.jump", flexion("IP", "90"), flexion("IP", "61"))));
        }

        @Test
        void newestVisitCountsWhateverTheOrder() {
            History history = History.of(List.of(
                    visit(2, START.minusWeeks(1), flexion("IP", "70")),
                    visit(1, START.minusWeeks(9), flexion("IP", "20"))));
            assertTrue(
                    found("history.jump", flexion("IP", "75"), visit(), history).isEmpty());
            assertTrue(
                    found("history.jump", flexion("IP", "33"), visit(), history).isPresent());
        }

        @Test
        void likelierExplanationReplacesTheJump() {
            Reading ty = flexion("IP", "60");
            assertTrue(afterVisit("history.jump", ty, flexion("IP", "20")).isEmpty());
            Optional<Finding> explained = afterVisit("misheard.fits-better", ty, flexion("IP", "20"));
            assertEquals(Optional.of(Angle.of(16)), explained.orElseThrow().alternative());
            assertEquals(List.of("value 60 degrees", "known 20 degrees", "alternative 16 degrees"), numbers(explained));
        }

        @Test
        void swappedDigitsThatFitAreOffered() {
            Optional<Finding> swapped = afterVisit("misheard.fits-better", flexion("IP", "57"), flexion("IP", "72"));
            assertEquals(Optional.of(Angle.of(75)), swapped.orElseThrow().alternative());
            assertTrue(afterVisit("misheard.fits-better", flexion("IP", "57"), flexion("IP", "67"))
                    .isEmpty());
            assertTrue(afterVisit("misheard.fits-better", flexion("IP", "57"), flexion("IP", "90"))
                    .isEmpty());
        }

        @Test
        void partnerExactlyAtTheErrorFits() {
            assertTrue(afterVisit("misheard.fits-better", flexion("IP", "15"), flexion("IP", "60"))
                    .isPresent());
            assertTrue(afterVisit("misheard.fits-better", flexion("IP", "15"), flexion("IP", "62"))
                    .isEmpty());
        }

        @Test
        void soundAlikeOfADeficitKeepsItsKind() {
            Optional<Finding> finding = afterVisit("misheard.fits-better", lacks("IP", "40"), lacks("IP", "10"));
            assertEquals(
                    Optional.of(Extension.deficit("14")), finding.orElseThrow().alternative());
        }

        @Test
        void soundAlikeOfAGapKeepsItsUnit() {
            Optional<Finding> finding = afterVisit(
                    "misheard.fits-better", gap("little tip", "50", MILLIMETRE), gap("little tip", "1.2", CENTIMETRE));
            assertEquals(
                    "15 mm", finding.orElseThrow().alternative().orElseThrow().words());
        }

        @Test
        void withoutEarlierVisitsTheOtherModeThenTheOtherHandIsAsked() {
            assertTrue(found("misheard.fits-better", flexion("IP", "16"), passive(flexion("IP", "65")))
                    .isPresent());
            assertTrue(found("misheard.fits-better", flexion("IP", "16"), left(flexion("IP", "65")))
                    .isPresent());
            assertTrue(found(
                            "misheard.fits-better",
                            flexion("IP", "16"),
                            passive(flexion("IP", "20")),
                            left(flexion("IP", "65")))
                    .isEmpty());
        }

        @Test
        void signFlipIsAskedWithTheOtherKind() {
            Optional<Finding> flip = afterVisit("history.sign-flip", hyper("IP", "10"), lacks("IP", "10"));
            assertEquals(Optional.of(Severity.ASK), severity(flip));
            assertEquals(
                    Optional.of(Extension.deficit("10")), flip.orElseThrow().alternative());
            assertEquals(
                    Optional.of(Extension.hyperextension("8")),
                    afterVisit("history.sign-flip", lacks("IP", "8"), hyper("IP", "8"))
                            .orElseThrow()
                            .alternative());
        }

        @Test
        void flipWithinTheErrorOfOneRaterIsNone() {
            assertTrue(afterVisit("history.sign-flip", hyper("IP", "2"), lacks("IP", "3"))
                    .isEmpty());
            assertTrue(afterVisit("history.sign-flip", hyper("IP", "3"), lacks("IP", "3"))
                    .isPresent());
            assertTrue(afterVisit("history.sign-flip", neutral("IP"), lacks("IP", "30"))
                    .isEmpty());
            assertTrue(afterVisit("history.sign-flip", lacks("IP", "5"), lacks("IP", "30"))
                    .isEmpty());
        }

        @Test
        void flipExplainsAJump() {
            assertTrue(afterVisit("history.jump", hyper("IP", "15"), lacks("IP", "15"))
                    .isEmpty());
        }

        @Test
        void valueOfTheOtherHandIsAskedAbout() {
            Reading[] last = {flexion("IP", "25"), left(flexion("IP", "78"))};
            Optional<Finding> which = afterVisit("side.fits-other-hand", flexion("IP", "77"), last);
            assertEquals(List.of("value 77 degrees", "this hand 25 degrees", "other hand 78 degrees"), numbers(which));
            assertTrue(afterVisit("history.jump", flexion("IP", "77"), last).isEmpty());
            assertTrue(afterVisit("side.fits-other-hand", flexion("IP", "45"), last)
                    .isEmpty());
            assertTrue(afterVisit("side.fits-other-hand", flexion("IP", "67"), last)
                    .isEmpty());
            assertTrue(afterVisit("side.fits-other-hand", flexion("IP", "68"), last)
                    .isPresent());
            assertTrue(afterVisit("side.fits-other-hand", left(flexion("IP", "77")), last)
                    .isEmpty());
        }

        @Test
        void scoresJumpToo() {
            assertEquals(
                    List.of("now 9 ", "last visit 6 ", "limit 2 points"),
                    numbers(afterVisit("history.jump", score(9), score(6))));
            assertTrue(afterVisit("history.jump", score(8), score(6)).isEmpty());
        }

        @Test
        void uncheckedTeenIsOnlyNoted() {
            String rule = "misheard.unchecked-teen";
            assertEquals(Optional.of(Severity.NOTE), severity(found(rule, flexion("IP", "16"))));
            assertTrue(found(rule, flexion("IP", "60")).isEmpty());
            assertTrue(found(rule, flexion("IP", "20")).isEmpty());
            assertTrue(found(rule, lacks("IP", "16")).isEmpty());
            assertTrue(
                    afterVisit(rule, flexion("IP", "16"), flexion("IP", "18")).isEmpty());
        }
    }

    @Nested
    class Hands {
        @Test
        void healthyDifferencesAreNoted() {
            Optional<Finding> note = found("side.difference", flexion("MP", "50"), left(flexion("MP", "62")));
            assertEquals(Optional.of(Severity.NOTE), severity(note));
            assertEquals(List.of("this hand 50 degrees", "other hand 62 degrees", "limit 10.6 degrees"), numbers(note));
            assertTrue(found("side.difference", flexion("MP", "50"), left(flexion("MP", "60")))
                    .isEmpty());
            assertTrue(found("side.difference", flexion("MP", "50"), passive(left(flexion("MP", "80"))))
                    .isEmpty());
        }

        @Test
        void uninvolvedHandWorseIsAskedInEitherOrder() {
            History leftInjured = History.none().with(PatientProtocol.none().involving(Side.LEFT));
            Reading better = left(flexion("MP", "62"));
            Reading worse = flexion("MP", "50");
            String rule = "side.uninvolved-worse";
            assertEquals(Optional.of(Severity.ASK), severity(found(rule, worse, visit(better), leftInjured)));
            assertTrue(found(rule, better, visit(worse), leftInjured).isPresent());
            assertTrue(
                    found("side.difference", worse, visit(better), leftInjured).isEmpty());
            assertTrue(found(rule, worse, visit(left(flexion("MP", "60"))), leftInjured)
                    .isEmpty());
        }

        @Test
        void involvedHandWorseIsExpected() {
            History rightInjured = History.none().with(PatientProtocol.none().involving(Side.RIGHT));
            Visit other = visit(left(flexion("MP", "80")));
            assertTrue(found("side.uninvolved-worse", flexion("MP", "20"), other, rightInjured)
                    .isEmpty());
            assertTrue(found("side.difference", flexion("MP", "20"), other, rightInjured)
                    .isPresent());
            assertTrue(found("side.uninvolved-worse", flexion("MP", "20"), other, History.none())
                    .isEmpty());
        }

        @Test
        void smallerGapIsTheBetterHand() {
            History leftInjured = History.none().with(PatientProtocol.none().involving(Side.LEFT));
            Visit other = visit(left(gap("little tip", "2", MILLIMETRE)));
            assertTrue(found("side.uninvolved-worse", gap("little tip", "20", MILLIMETRE), other, leftInjured)
                    .isPresent());
            assertTrue(found(
                            "side.uninvolved-worse",
                            gap("little tip", "1", MILLIMETRE),
                            visit(left(gap("little tip", "40", MILLIMETRE))),
                            leftInjured)
                    .isEmpty());
        }
    }

    @Nested
    class OppositionSeries {
        @Test
        void slipOfTheDecimalPointIsAsked() {
            Reading[] before = {gap("index tip", "35", MILLIMETRE), gap("ring tip", "42", MILLIMETRE)};
            Optional<Finding> slip = found("series.tenfold", gap("middle tip", "3.8", MILLIMETRE), before);
            assertEquals(Optional.of(Severity.ASK), severity(slip));
            assertEquals("38 mm", slip.orElseThrow().alternative().orElseThrow().words());
            assertEquals(List.of("value 3.8 mm", "neighbour 35 mm"), numbers(slip));
        }

        @Test
        void tenTimesTooLargeIsAskedToo() {
            Reading[] before = {gap("index tip", "0.7", CENTIMETRE), gap("little tip", "0.9", CENTIMETRE)};
            Optional<Finding> slip = found("series.tenfold", gap("ring tip", "8", CENTIMETRE), before);
            assertEquals(
                    "0.8 cm", slip.orElseThrow().alternative().orElseThrow().words());
        }

        @Test
        void bothNeighboursMustAgreeAndZeroIsNone() {
            Reading[] before = {gap("index tip", "4", MILLIMETRE), gap("ring tip", "30", MILLIMETRE)};
            assertTrue(found("series.tenfold", gap("middle tip", "40", MILLIMETRE), before)
                    .isEmpty());
            assertTrue(found("series.tenfold", gap("middle tip", "0", MILLIMETRE), before)
                    .isEmpty());
            assertTrue(found("series.tenfold", gap("middle tip", "10", MILLIMETRE), gap("index tip", "0", MILLIMETRE))
                    .isEmpty());
            assertTrue(found(
                            "series.tenfold",
                            gap("middle tip", "40", MILLIMETRE),
                            left(gap("index tip", "4", MILLIMETRE)))
                    .isEmpty());
        }

        @ParameterizedTest
        @CsvSource({"31, false", "32, true", "50, true", "51, false"})
        void tenfoldHasAWindow(String amount, boolean expected) {
            assertEquals(
                    expected,
                    found("series.tenfold", gap("middle tip", amount, MILLIMETRE), gap("index tip", "4", MILLIMETRE))
                            .isPresent());
        }

        @Test
        void gapThatCannotBeTenTimesLargerHasNoAlternative() {
            Optional<Finding> slip =
                    found("series.tenfold", gap("middle tip", "105", CENTIMETRE), gap("index tip", "950", CENTIMETRE));
            assertEquals(Optional.empty(), slip.orElseThrow().alternative());
        }

        @Test
        void fartherTargetMuchNearerIsNoted() {
            String rule = "series.nearer-target";
            Reading near = gap("index tip", "30", MILLIMETRE);
            assertEquals(Optional.of(Severity.NOTE), severity(found(rule, gap("ring tip", "19", MILLIMETRE), near)));
            assertTrue(found(rule, gap("ring tip", "20", MILLIMETRE), near).isEmpty());
            assertTrue(found(rule, near, gap("ring tip", "1.9", CENTIMETRE)).isPresent());
            assertTrue(found(rule, gap("ring tip", "60", MILLIMETRE), near).isEmpty());
        }

        @Test
        void scoreAndGapMustAgree() {
            String rule = "opposition.score-and-gap";
            Optional<Finding> question = found(rule, score(6), gap("ring tip", "8", MILLIMETRE));
            assertEquals(List.of("score 6 ", "stage 5 ", "gap 8 mm"), numbers(question));
            assertTrue(found(rule, gap("ring tip", "8", MILLIMETRE), score(5)).isPresent());
            assertTrue(found(rule, score(4), gap("ring tip", "8", MILLIMETRE)).isEmpty());
            assertTrue(found(rule, score(9), gap("ring tip", "0", MILLIMETRE)).isEmpty());
            assertTrue(found(rule, score(9), left(gap("ring tip", "8", MILLIMETRE)))
                    .isEmpty());
            assertTrue(found(rule, score(9), passive(gap("ring tip", "8", MILLIMETRE)))
                    .isEmpty());
        }
    }

    @Nested
    class Protocols {
        private History protocol(PatientProtocol protocol) {
            return History.none().with(protocol);
        }

        @Test
        void passiveNotPermittedIsAsked() {
            History history = protocol(PatientProtocol.none().withoutPassive());
            String rule = "protocol.passive";
            assertEquals(
                    Optional.of(Severity.ASK), severity(found(rule, passive(flexion("IP", "60")), visit(), history)));
            assertTrue(found(rule, flexion("IP", "60"), visit(), history).isEmpty());
            assertTrue(found(rule, passive(flexion("IP", "60")), visit(), History.none())
                    .isEmpty());
            Reading untested = passive(reading("IP:FLEXION", new Value.NotTested(NotTestedReason.PROTOCOL)));
            assertTrue(found(rule, untested, visit(), history).isEmpty());
        }

        @Test
        void noteAboutResistanceIsAsked() {
            History history = protocol(PatientProtocol.none().withoutResisted());
            Visit visit = with(visit(), flexion("IP", "60"), new Remark.Note("Resisted flexion 4 of 5"));
            Visit plain = with(visit(), flexion("IP", "60"), new Remark.Note("no pain"));
            assertEquals(
                    List.of("protocol.resisted"),
                    VALIDATOR.judgeAll(visit, history).get(1).stream()
                            .map(Finding::rule)
                            .toList());
            assertEquals(List.of(), VALIDATOR.judgeAll(plain, history).get(1));
            assertEquals(List.of(), VALIDATOR.judgeAll(visit, History.none()).get(1));
        }

        @Test
        void rangeLimitIsAskedBeyondItOnly() {
            History history = protocol(PatientProtocol.none()
                    .limiting(
                            new RangeLimit(Measure.of("IP", Motion.FLEXION), Optional.of(Mode.ACTIVE), Angle.of(60))));
            String rule = "protocol.range";
            assertEquals(
                    List.of("value 61 degrees", "limit 60 degrees"),
                    numbers(found(rule, flexion("IP", "61"), visit(), history)));
            assertTrue(found(rule, flexion("IP", "60"), visit(), history).isEmpty());
            assertTrue(
                    found(rule, passive(flexion("IP", "70")), visit(), history).isEmpty());
            assertTrue(found(rule, flexion("MP", "70"), visit(), history).isEmpty());
        }

        @Test
        void extensionBlockIsAStraightestPosition() {
            RangeLimit block =
                    new RangeLimit(Measure.of("IP", Motion.EXTENSION), Optional.empty(), Extension.deficit("20"));
            History history =
                    protocol(PatientProtocol.none().involving(Side.RIGHT).limiting(block));
            assertTrue(
                    found("protocol.range", lacks("IP", "19"), visit(), history).isPresent());
            assertTrue(found("protocol.range", passive(neutral("IP")), visit(), history)
                    .isPresent());
            assertTrue(
                    found("protocol.range", lacks("IP", "20"), visit(), history).isEmpty());
            assertTrue(found("protocol.range", left(neutral("IP")), visit(), history)
                    .isEmpty());
        }

        @Test
        void onlyAnglesAndExtensionsHaveRangeLimits() {
            Measure gap = Measure.of("little tip", Motion.OPPOSITION_GAP);
            assertThrows(IllegalArgumentException.class, () -> new RangeLimit(gap, Optional.empty(), Angle.of(3)));
            Measure flexion = Measure.of("IP", Motion.FLEXION);
            assertThrows(
                    IllegalArgumentException.class,
                    () -> new RangeLimit(flexion, Optional.empty(), Extension.deficit("3")));
        }
    }

    @Nested
    class Words {
        @Test
        void fullWithoutANumberIsAsked() {
            Reading full = reading("IP:FLEXION", new Value.Unquantified(Value.Phrase.FULL));
            assertEquals(Optional.of(Severity.ASK), severity(found("value.no-number", full)));
            assertTrue(found("value.no-number", flexion("IP", "80")).isEmpty());
        }

        @Test
        void notTestedNeedsAReason() {
            Reading open = reading("IP:FLEXION", new Value.NotTested(NotTestedReason.UNSTATED));
            Reading given = reading("IP:FLEXION", new Value.NotTested(NotTestedReason.PIN));
            assertEquals(Optional.of(Severity.ASK), severity(found("reason.missing", open)));
            assertTrue(found("reason.missing", given).isEmpty());
        }

        @Test
        void firstLargeHyperextensionLeadsToAdvice() {
            String rule = "placement.hyperextension";
            Reading large = hyper("MP", "25");
            Reading lateral =
                    new Reading(large.side(), large.measure(), large.mode(), large.value(), Placement.LATERAL);
            assertEquals(Optional.of(Severity.NOTE), severity(found(rule, large)));
            assertTrue(found(rule, lateral).isEmpty());
            assertTrue(found(rule, hyper("MP", "20")).isEmpty());
            assertTrue(found(rule, lacks("MP", "25")).isEmpty());
            assertTrue(afterVisit(rule, large, hyper("MP", "21")).isEmpty());
            assertTrue(afterVisit(rule, large, hyper("MP", "20")).isPresent());
            assertTrue(afterVisit(rule, large, left(hyper("MP", "30"))).isPresent());
        }
    }

    @Test
    void severestFindingComesFirst() {
        List<Finding> findings =
                VALIDATOR.judge(flexion("IP", "15"), visit(flexion("IP", "40"), lacks("IP", "20")), History.none());
        assertEquals(
                List.of(Severity.HOLD, Severity.ASK, Severity.NOTE),
                findings.stream().map(Finding::severity).distinct().toList());
    }

    @Test
    void thresholdTableMustBeWholeAndPositive() {
        String header = "id\tvalue\tunit\tmeaning\tmark\tsource\n";
        Thresholds empty = Thresholds.read("own", header);
        RuleTables tables = RuleTables.shipped().with(empty);
        assertThrows(TableException.class, () -> Validator.with(tables));
        assertThrows(
                TableException.class,
                () -> Thresholds.read("own", header + "a\t0\tdegrees\tnothing\tour default\tx\n"));
    }

    @Test
    void askLimitAboveHoldLimitIsRefusedWithItsLine() {
        String text =
                "measure\tmode\tkind\task\thold\tunit\tadvice\tmark\tsource\n\nIP:FLEXION\tany\tvalue\t90\t80\tdegrees\t-\tour default\tx\n";
        TableException refused = assertThrows(TableException.class, () -> Limits.read("limits", text));
        assertEquals(
                "Line 3 of the table limits cannot be used: 'ask' must not be above 'hold'.", refused.getMessage());
    }
}
