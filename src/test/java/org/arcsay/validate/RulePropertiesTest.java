package org.arcsay.validate;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import org.arcsay.analysis.Visits;
import org.arcsay.model.Distance;
import org.arcsay.model.Entry;
import org.arcsay.model.Finding;
import org.arcsay.model.LengthUnit;
import org.arcsay.model.Measure;
import org.arcsay.model.Mode;
import org.arcsay.model.Motion;
import org.arcsay.model.PatientProtocol;
import org.arcsay.model.PatientProtocol.RangeLimit;
import org.arcsay.model.Placement;
import org.arcsay.model.Reading;
import org.arcsay.model.Severity;
import org.arcsay.model.Side;
import org.arcsay.model.Value;
import org.arcsay.model.Value.Angle;
import org.arcsay.model.Value.Extension;
import org.arcsay.model.Value.ExtensionKind;
import org.arcsay.model.Visit;
import org.junit.jupiter.api.RepeatedTest;
import org.junit.jupiter.api.RepetitionInfo;
import org.junit.jupiter.api.Test;

/** What holds for all rules, on seeded random visits. */
class RulePropertiesTest {
    private static final Validator VALIDATOR = Validator.standard();
    private static final int REPETITIONS = 200;

    @RepeatedTest(REPETITIONS)
    void noRuleEverChangesAnEntry(RepetitionInfo info) {
        Generator random = new Generator(info.getCurrentRepetition());
        Visit visit = random.visit(1);
        History history = random.history();
        String visitBefore = visit.toString();
        String historyBefore = history.toString();
        Reading candidate = random.reading();
        String candidateBefore = candidate.toString();
        VALIDATOR.judge(candidate, visit, history);
        VALIDATOR.judgeAll(visit, history);
        assertEquals(visitBefore, visit.toString());
        assertEquals(historyBefore, history.toString());
        assertEquals(candidateBefore, candidate.toString());
    }

    @RepeatedTest(REPETITIONS)
    void judgingTwiceGivesTheSame(RepetitionInfo info) {
        Generator random = new Generator(info.getCurrentRepetition());
        Visit visit = random.visit(1);
        History history = random.history();
        assertEquals(VALIDATOR.judgeAll(visit, history), Validator.standard().judgeAll(visit, history));
    }

    @RepeatedTest(REPETITIONS)
    void anotherEntryNeverRemovesAnUnrelatedFinding(RepetitionInfo info) {
        Generator random = new Generator(5000 + info.getCurrentRepetition());
        Visit visit = random.visit(1);
        History history = random.history();
        Reading added = random.reading();
        Map<Integer, List<Finding>> before = VALIDATOR.judgeAll(visit, history);
        Map<Integer, List<Finding>> after = VALIDATOR.judgeAll(Visits.with(visit, added), history);
        for (Entry entry : visit.counting()) {
            if (!related(entry.reading(), added)) {
                assertEquals(before.get(entry.number()), after.get(entry.number()), entry.reading() + " + " + added);
            }
        }
    }

    @RepeatedTest(REPETITIONS)
    void anotherEntryNeverRemovesALimitOrAContradiction(RepetitionInfo info) {
        Generator random = new Generator(9000 + info.getCurrentRepetition());
        Visit visit = random.visit(1);
        History history = random.history();
        Map<Integer, List<Finding>> before = VALIDATOR.judgeAll(visit, history);
        Map<Integer, List<Finding>> after = VALIDATOR.judgeAll(Visits.with(visit, random.reading()), history);
        before.forEach((number, findings) -> findings.stream()
                .filter(finding -> finding.severity() == Severity.HOLD)
                .forEach(finding -> assertTrue(after.get(number).contains(finding), finding.sentence())));
    }

    @RepeatedTest(REPETITIONS)
    void exchangingTheHandsExchangesNothingElse(RepetitionInfo info) {
        Generator random = new Generator(info.getCurrentRepetition());
        Visit visit = random.visit(1);
        History history = random.history();
        Map<Integer, List<Finding>> plain = VALIDATOR.judgeAll(visit, history);
        Map<Integer, List<Finding>> mirrored = VALIDATOR.judgeAll(mirror(visit), mirror(history));
        assertEquals(plain.keySet(), mirrored.keySet());
        plain.forEach((number, findings) ->
                assertEquals(findings.stream().map(RulePropertiesTest::mirror).toList(), mirrored.get(number)));
    }

    @RepeatedTest(REPETITIONS)
    void unitsOfARoundTripAreTheSameReading(RepetitionInfo info) {
        Random random = new Random(info.getCurrentRepetition());
        Distance millimetres = new Distance(BigDecimal.valueOf(random.nextInt(9990), 1), LengthUnit.MILLIMETRE);
        assertEquals(millimetres, millimetres.in(LengthUnit.CENTIMETRE).in(LengthUnit.MILLIMETRE));
        Distance inches = new Distance(BigDecimal.valueOf(random.nextInt(3900), 2), LengthUnit.INCH);
        assertEquals(inches, inches.in(LengthUnit.MILLIMETRE).in(LengthUnit.INCH));
        Distance back = millimetres.in(LengthUnit.INCH).in(LengthUnit.MILLIMETRE);
        BigDecimal off = back.amount().subtract(millimetres.amount()).abs();
        assertTrue(off.compareTo(new BigDecimal("1E-28")) < 0, off.toString());
    }

    @RepeatedTest(REPETITIONS)
    void unitOfADistanceDoesNotChangeItsLimit(RepetitionInfo info) {
        Random random = new Random(info.getCurrentRepetition());
        Distance said = new Distance(BigDecimal.valueOf(random.nextInt(350)), LengthUnit.MILLIMETRE);
        assertEquals(limit(said), limit(said.in(LengthUnit.CENTIMETRE)));
    }

    @Test
    void everyRuleSpeaksInTheRandomVisits() {
        Set<String> spoken = new TreeSet<>();
        for (int seed = 0; seed < 3000; seed++) {
            Generator random = new Generator(seed);
            VALIDATOR.judgeAll(random.visit(1), random.history()).values().stream()
                    .flatMap(List::stream)
                    .map(Finding::rule)
                    .forEach(spoken::add);
        }
        Set<String> all = new TreeSet<>(
                VALIDATOR.rules().stream().map(rule -> rule.info().id()).toList());
        all.remove("protocol.resisted");
        assertEquals(all, spoken);
    }

    @Test
    void findingsKeepToWhatTheirRuleDeclares() {
        Map<String, RuleInfo> infos =
                VALIDATOR.rules().stream().map(Rule::info).collect(Collectors.toMap(RuleInfo::id, info -> info));
        for (int seed = 0; seed < 500; seed++) {
            Generator random = new Generator(seed);
            VALIDATOR.judgeAll(random.visit(1), random.history()).values().stream()
                    .flatMap(List::stream)
                    .forEach(finding -> {
                        assertTrue(infos.get(finding.rule()).severities().contains(finding.severity()), finding.rule());
                        assertTrue(finding.sentence().matches("[^\\n]{20,400}[.?]"), finding.sentence());
                    });
        }
    }

    private static List<Severity> limit(Distance distance) {
        Reading reading = Visits.reading("little tip:OPPOSITION_GAP", new Value.Gap(distance));
        return VALIDATOR.judge(reading, Visits.visit(), History.none()).stream()
                .filter(finding -> finding.rule().equals("limit.high"))
                .map(Finding::severity)
                .toList();
    }

    /** Related are readings at one site of either hand, and all readings of the opposition of one hand. */
    private static boolean related(Reading first, Reading second) {
        return first.measure().site().equals(second.measure().site())
                || opposition(first) && opposition(second) && first.side() == second.side();
    }

    private static boolean opposition(Reading reading) {
        return EnumSet.of(Motion.OPPOSITION_GAP, Motion.OPPOSITION_SCORE)
                .contains(reading.measure().motion());
    }

    private static Visit mirror(Visit visit) {
        Reading[] mirrored = visit.entries().stream()
                .map(entry -> entry.reading().withSide(entry.reading().side().other()))
                .toArray(Reading[]::new);
        return Visits.visit(visit.id(), visit.startedAt(), mirrored);
    }

    private static History mirror(History history) {
        PatientProtocol p = history.protocol();
        return new History(
                history.earlier().stream().map(RulePropertiesTest::mirror).toList(),
                new PatientProtocol(
                        p.involvedSide().map(Side::other), p.passivePermitted(), p.resistedPermitted(), p.ranges()));
    }

    private static Finding mirror(Finding finding) {
        String sentence = finding.sentence()
                .replaceAll("\\bleft\\b", "§")
                .replaceAll("\\bright\\b", "left")
                .replace("§", "right")
                .replace("cannot be left", "cannot be right");
        return new Finding(finding.rule(), finding.severity(), sentence, finding.numbers(), finding.alternative());
    }

    /** Random readings, visits and histories, the same for the same seed; many values coincide on purpose. */
    private static final class Generator {
        private static final List<Measure> MEASURES = List.of(
                Measure.of("IP", Motion.FLEXION),
                Measure.of("IP", Motion.EXTENSION),
                Measure.of("MP", Motion.FLEXION),
                Measure.of("MP", Motion.EXTENSION),
                Measure.of("CMC", Motion.RADIAL_ABDUCTION),
                Measure.of("CMC", Motion.EXTENSION),
                Measure.of("index tip", Motion.OPPOSITION_GAP),
                Measure.of("ring tip", Motion.OPPOSITION_GAP),
                Measure.of("little base", Motion.OPPOSITION_GAP),
                Measure.of("thumb", Motion.OPPOSITION_SCORE),
                Measure.of("thumb", Motion.WEB_SPAN));

        private final Random random;

        Generator(long seed) {
            this.random = new Random(seed);
        }

        Visit visit(long id) {
            List<Reading> readings = new ArrayList<>();
            int count = 1 + random.nextInt(12);
            for (int i = 0; i < count; i++) {
                readings.add(reading());
            }
            return Visits.visit(id, Visits.START.minusWeeks(10 - id), readings.toArray(Reading[]::new));
        }

        History history() {
            List<Visit> earlier = new ArrayList<>();
            int count = random.nextInt(4);
            for (int i = 0; i < count; i++) {
                earlier.add(visit(2 + i));
            }
            return new History(earlier, protocol());
        }

        Reading reading() {
            Measure measure = MEASURES.get(random.nextInt(MEASURES.size()));
            return new Reading(
                    random.nextBoolean() ? Side.LEFT : Side.RIGHT,
                    measure,
                    random.nextInt(4) == 0 ? Mode.PASSIVE : Mode.ACTIVE,
                    value(measure),
                    Placement.values()[random.nextInt(3)]);
        }

        private PatientProtocol protocol() {
            PatientProtocol protocol = PatientProtocol.none();
            if (random.nextBoolean()) {
                protocol = protocol.involving(random.nextBoolean() ? Side.LEFT : Side.RIGHT);
            }
            if (random.nextInt(3) == 0) {
                protocol = protocol.withoutPassive()
                        .limiting(new RangeLimit(MEASURES.get(0), Optional.empty(), Angle.of(60)));
            }
            return protocol;
        }

        private Value value(Measure measure) {
            int form = random.nextInt(12);
            if (form == 0) {
                Value.NotTestedReason[] reasons = Value.NotTestedReason.values();
                return new Value.NotTested(reasons[random.nextInt(reasons.length)]);
            }
            if (form == 1) {
                return new Value.Unquantified(Value.Phrase.FULL);
            }
            return switch (measure.dimension()) {
                case ANGLE -> Angle.of(degrees());
                case EXTENSION -> extension();
                case GAP -> new Value.Gap(distance());
                case SPAN -> new Value.Span(distance());
                case SCORE -> new Value.Score(random.nextInt(11));
            };
        }

        private int degrees() {
            int teenTy = 3 + random.nextInt(7);
            return switch (random.nextInt(4)) {
                case 0 -> teenTy * 10;
                case 1 -> teenTy + 10;
                default -> random.nextInt(181);
            };
        }

        private Value extension() {
            ExtensionKind kind = random.nextBoolean() ? ExtensionKind.DEFICIT : ExtensionKind.HYPEREXTENSION;
            return new Extension(kind, BigDecimal.valueOf(random.nextInt(120)));
        }

        private Distance distance() {
            LengthUnit unit = LengthUnit.values()[random.nextInt(3)];
            int amount = random.nextInt(20) == 0 ? random.nextInt(1000) : random.nextInt(60);
            return new Distance(
                    random.nextBoolean() ? BigDecimal.valueOf(amount) : BigDecimal.valueOf(amount, 1), unit);
        }
    }
}
