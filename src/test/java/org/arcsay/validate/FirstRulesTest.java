package org.arcsay.validate;

import static org.arcsay.analysis.Visits.flexion;
import static org.arcsay.analysis.Visits.gap;
import static org.arcsay.analysis.Visits.hyper;
import static org.arcsay.analysis.Visits.lacks;
import static org.arcsay.analysis.Visits.neutral;
import static org.arcsay.analysis.Visits.visit;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Optional;
import org.arcsay.model.Finding;
import org.arcsay.model.LengthUnit;
import org.arcsay.model.Mode;
import org.arcsay.model.Reading;
import org.arcsay.model.Severity;
import org.arcsay.model.Value;
import org.arcsay.model.Visit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class FirstRulesTest {
    private final Validator validator = Validator.standard();

    private List<Finding> judge(Reading reading, Reading... before) {
        return validator.judge(reading, visit(before), History.none());
    }

    private Optional<Finding> found(String rule, List<Finding> findings) {
        return findings.stream().filter(f -> f.rule().equals(rule)).findFirst();
    }

    @Test
    void ordinaryReadingHasNoFinding() {
        assertEquals(List.of(), judge(flexion("IP", "75"), flexion("MP", "55"), neutral("IP")));
    }

    @ParameterizedTest
    @CsvSource({
        "IP, ACTIVE, 95, ", "IP, ACTIVE, 95.5, ASK", "IP, PASSIVE, 100, ", "IP, PASSIVE, 101, ASK",
        "IP, ACTIVE, 130, ASK", "IP, ACTIVE, 131, HOLD", "MP, ACTIVE, 90, ", "MP, ACTIVE, 91, ASK",
        "MP, PASSIVE, 100, ", "MP, PASSIVE, 126, ASK", "MP, ACTIVE, 140, ASK", "MP, ACTIVE, 141, HOLD"
    })
    void flexionLimits(String joint, Mode mode, String degrees, Severity expected) {
        Optional<Finding> high =
                found("limit.high", judge(flexion(joint, degrees).withMode(mode)));
        assertEquals(Optional.ofNullable(expected), high.map(Finding::severity));
    }

    @Test
    void limitFindingNamesNumbersAndSoundAlike() {
        Finding finding = found("limit.high", judge(hyper("MP", "70"))).orElseThrow();
        assertEquals(
                List.of(
                        new Finding.LabelledNumber("value", "70", "degrees"),
                        new Finding.LabelledNumber("limit", "60", "degrees")),
                finding.numbers());
        assertEquals(Optional.of(Value.Extension.hyperextension("17")), finding.alternative());
        assertEquals(
                "right MP extension, active: hyperextends 70 degrees is unusually large, above 60 degrees.",
                finding.sentence());
    }

    @Test
    void anyJointHasTheDeficitLimit() {
        assertEquals(
                Severity.ASK,
                found("limit.high", judge(lacks("IP", "41"))).orElseThrow().severity());
        assertTrue(found("limit.high", judge(lacks("CMC", "40"))).isEmpty());
    }

    @Test
    void gapsAreLimitedInWhateverUnitTheyAreSaid() {
        assertTrue(found("limit.high", judge(gap("little tip", "10", LengthUnit.CENTIMETRE)))
                .isEmpty());
        assertEquals(
                Severity.HOLD,
                found("limit.high", judge(gap("little tip", "9.9", LengthUnit.INCH)))
                        .orElseThrow()
                        .severity());
    }

    @Test
    void flexionBelowDeficitIsHeldInEitherOrder() {
        String rule = "contradiction.flexion-below-deficit";
        assertEquals(
                Severity.HOLD,
                judge(flexion("IP", "15"), lacks("IP", "20")).get(0).severity());
        assertTrue(found(rule, judge(lacks("IP", "20"), flexion("IP", "15"))).isPresent());
        assertTrue(found(rule, judge(flexion("IP", "20"), lacks("IP", "20"))).isEmpty());
        assertTrue(found(rule, judge(flexion("MP", "15"), lacks("IP", "20"))).isEmpty());
        assertTrue(found(rule, judge(flexion("IP", "15").withMode(Mode.PASSIVE), lacks("IP", "20")))
                .isEmpty());
        assertTrue(found(rule, judge(flexion("IP", "15"), hyper("IP", "20"))).isEmpty());
    }

    @Test
    void deficitAndHyperextensionContradict() {
        String rule = "contradiction.deficit-and-hyperextension";
        Finding finding =
                found(rule, judge(lacks("IP", "10"), hyper("IP", "5"))).orElseThrow();
        assertEquals(Severity.HOLD, finding.severity());
        assertEquals("10", finding.numbers().get(0).number());
        assertEquals("5", finding.numbers().get(1).number());
        assertTrue(found(rule, judge(hyper("IP", "5"), neutral("IP"))).isEmpty());
        assertTrue(found(rule, judge(hyper("IP", "5"), lacks("MP", "5"))).isEmpty());
    }

    @Test
    void mixedUnitsAreAskedAndZeroHasNoUnit() {
        String rule = "series.mixed-units";
        Reading second = gap("middle tip", "3.8", LengthUnit.CENTIMETRE);
        assertEquals(
                Optional.of(Severity.ASK),
                found(rule, judge(second, gap("index tip", "20", LengthUnit.MILLIMETRE)))
                        .map(Finding::severity));
        assertTrue(found(rule, judge(second, gap("index tip", "0", LengthUnit.MILLIMETRE)))
                .isEmpty());
        assertTrue(found(rule, judge(second, gap("index tip", "2", LengthUnit.CENTIMETRE)))
                .isEmpty());
    }

    @Test
    void repeatIsAskedOnceAndNamesTheEntry() {
        Finding finding = found("repeat.same", judge(flexion("IP", "70"), flexion("MP", "50"), flexion("IP", "65")))
                .orElseThrow();
        assertEquals(Severity.ASK, finding.severity());
        assertEquals("2", finding.numbers().get(0).number());
    }

    @Test
    void correctionIsNoRepeatOfWhatItReplaces() {
        Visit visit = visit(flexion("IP", "16"));
        assertEquals(List.of(), validator.judgeCorrection(flexion("IP", "60"), 1, visit, History.none()));
    }

    @Test
    void teenAndTyInOneVisitAreAsked() {
        Finding finding = found("misheard.teen-ty-repeat", judge(flexion("IP", "60"), flexion("IP", "16")))
                .orElseThrow();
        assertEquals(Optional.of(Value.Angle.of(16)), finding.alternative());
        assertTrue(found("misheard.teen-ty-repeat", judge(flexion("IP", "61"), flexion("IP", "16")))
                .isEmpty());
    }

    @Test
    void wholeVisitIsJudgedEntryByEntry() {
        var all =
                validator.judgeAll(visit(flexion("IP", "15"), lacks("IP", "20"), flexion("IP", "50")), History.none());
        assertEquals(List.of(1, 2, 3), List.copyOf(all.keySet()));
        assertTrue(found("contradiction.flexion-below-deficit", all.get(1)).isPresent());
        assertTrue(found("contradiction.flexion-below-deficit", all.get(2)).isPresent());
        assertTrue(found("repeat.same", all.get(1)).isEmpty());
        assertTrue(found("repeat.same", all.get(3)).isPresent());
    }

    @Test
    void versionChangesWithTheTable() {
        String header = "measure\tmode\tkind\task\thold\tunit\tadvice\tmark\tsource\n";
        Limits own = Limits.read("own", header + "IP:FLEXION\tany\tvalue\t80\t-\tdegrees\t-\tour default\ttest\n");
        assertTrue(validator.version().matches("rules-\\d+-[0-9a-f]{8}"));
        assertTrue(!Validator.with(RuleTables.shipped().with(own)).version().equals(validator.version()));
        assertEquals(validator.version(), Validator.standard().version());
    }
}
