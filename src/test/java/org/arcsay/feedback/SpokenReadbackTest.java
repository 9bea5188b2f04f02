package org.arcsay.feedback;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.arcsay.model.Dimension;
import org.arcsay.model.Distance;
import org.arcsay.model.LengthUnit;
import org.arcsay.model.Measure;
import org.arcsay.model.Mode;
import org.arcsay.model.Motion;
import org.arcsay.model.Placement;
import org.arcsay.model.Reading;
import org.arcsay.model.Remark;
import org.arcsay.model.Side;
import org.arcsay.model.Sites;
import org.arcsay.model.Slot;
import org.arcsay.model.Value;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

class SpokenReadbackTest {
    private static final ClipVoice VOICE = ClipVoice.builtIn();

    @Test
    void saysTheValueLastAndDigitByDigit() {
        assertEquals("i p flexion, seven five", shortly("IP", Motion.FLEXION, Value.Angle.of(75)));
    }

    @Test
    void teensAndTiesDifferInMoreThanAnEnding() {
        assertEquals("one seven", SpokenReadback.value(Value.Angle.of(17)).text());
        assertEquals("seven zero", SpokenReadback.value(Value.Angle.of(70)).text());
    }

    @Test
    void saysDeficitAndHyperextensionInWords() {
        assertEquals("i p lacks, one zero", shortly("IP", Motion.EXTENSION, Value.Extension.deficit("10")));
        assertEquals(
                "m p hyperextension, one five", shortly("MP", Motion.EXTENSION, Value.Extension.hyperextension("15")));
        assertEquals("m p extension neutral", shortly("MP", Motion.EXTENSION, Value.Extension.neutral()));
    }

    @Test
    void saysTheUnitOfADistanceAndTouching() {
        assertEquals(
                "index tip, one two point five millimeters",
                shortly("index tip", Motion.OPPOSITION_GAP, gap("12.5", LengthUnit.MILLIMETRE)));
        assertEquals(
                "base of little, touches",
                shortly("little base", Motion.OPPOSITION_GAP, gap("0", LengthUnit.CENTIMETRE)));
        assertEquals("opposition score, one zero", shortly("thumb", Motion.OPPOSITION_SCORE, new Value.Score(10)));
    }

    @Test
    void mentionsAChangedHandOrMode() {
        Reading reading = reading(Side.LEFT, "IP", Motion.FLEXION, Mode.PASSIVE, Value.Angle.of(80));
        Slot before = new Slot(Side.RIGHT, reading.measure(), Mode.ACTIVE);
        assertEquals(
                "left, passive, i p flexion, eight zero",
                SpokenReadback.of(reading, List.of(), FeedbackLevel.SHORT, Optional.of(before))
                        .text());
    }

    @Test
    void saysEverythingAtTheFullLevel() {
        Reading reading = reading(Side.RIGHT, "IP", Motion.EXTENSION, Mode.ACTIVE, Value.Extension.deficit("10"));
        Remark pain = new Remark.Pain(Remark.PainPlace.AT_END_RANGE, OptionalInt.of(4));
        assertEquals(
                "right, active, i p extension, deficit, one zero degrees, pain at end range four",
                SpokenReadback.of(reading, List.of(pain), FeedbackLevel.FULL, Optional.of(reading.slot()))
                        .text());
    }

    @Test
    void namesTheReasonOfASkippedMeasure() {
        assertEquals(
                "i p flexion, not tested, pin",
                shortly("IP", Motion.FLEXION, new Value.NotTested(Value.NotTestedReason.PIN)));
    }

    /** No reading that can exist may be met with silence for want of a clip. */
    @ParameterizedTest
    @EnumSource(names = {"FULL", "SHORT"})
    void hasClipsForEveryReading(FeedbackLevel level) {
        long sentences = allReadings()
                .peek(reading -> {
                    Sentence sentence = SpokenReadback.of(reading, List.of(), level, Optional.empty());
                    assertTrue(VOICE.canSay(sentence), sentence::text);
                })
                .count();
        assertTrue(sentences > 30_000, "only " + sentences);
    }

    @Test
    void hasClipsForEveryRemark() {
        Reading reading = reading(Side.LEFT, "IP", Motion.FLEXION, Mode.PASSIVE, Value.Angle.of(80));
        Sentence sentence = SpokenReadback.of(reading, allRemarks(), FeedbackLevel.SHORT, Optional.empty());
        assertEquals(4 + allRemarks().size(), sentence.phrases().size());
        assertTrue(VOICE.canSay(sentence), sentence::text);
    }

    @Test
    void hasClipsForEverySlot() {
        measures().forEach(measure -> {
            Sentence sentence = SpokenReadback.slot(new Slot(Side.LEFT, measure, Mode.PASSIVE));
            assertTrue(VOICE.canSay(sentence), sentence::text);
        });
    }

    /**
     * Ordinary: a thumb measure on the same hand and in the same mode as before; degrees and millimetres below 100, centimetres
     * below 10 with halves.
     */
    @Test
    void saysEveryOrdinaryThumbReadingInUnderTwoSeconds() {
        double longest = ordinaryThumbReadings()
                .mapToDouble(reading -> {
                    Sentence words =
                            SpokenReadback.of(reading, List.of(), FeedbackLevel.SHORT, Optional.of(reading.slot()));
                    double seconds = VOICE.say(words, 1).duration().toMillis() / 1000.0;
                    assertTrue(seconds < 2, words.text() + ": " + seconds + " s");
                    return seconds;
                })
                .max()
                .orElseThrow();
        assertTrue(longest > 1.5, "the longest, " + longest + " s, is too short to be a sentence");
    }

    private static Stream<Reading> ordinaryThumbReadings() {
        return measures()
                .filter(measure -> Sites.standard().info(measure.site()).ray().equals("thumb"))
                .filter(SpokenReadbackTest::usual)
                .flatMap(measure -> numbers()
                        .filter(number -> number.compareTo(BigDecimal.valueOf(100)) < 0)
                        .flatMap(number -> values(measure, number).filter(value -> ordinary(measure, value, number)))
                        .map(value -> new Reading(Side.RIGHT, measure, Mode.ACTIVE, value, Placement.UNSTATED)));
    }

    /** Hyperextension is not said where extension past neutral is natural: there it is a plain angle. */
    private static boolean ordinary(Measure measure, Value value, BigDecimal number) {
        boolean natural = Sites.standard().info(measure.site()).naturalExtension();
        boolean centimetres = value.words().endsWith(" cm");
        return !value.words().endsWith(" in")
                && !(natural && value.words().startsWith("hyperextends"))
                && (centimetres ? number.compareTo(BigDecimal.TEN) < 0 : number.scale() == 0);
    }

    /** Measures of the thumb as hand therapists take them (common practice): hinge motions at IP, MP and CMC. */
    private static boolean usual(Measure measure) {
        boolean joint = List.of("IP", "MP", "CMC").contains(measure.site().code());
        return switch (measure.motion()) {
            case FLEXION, EXTENSION, RADIAL_ABDUCTION, PALMAR_ABDUCTION -> joint;
            case OPPOSITION_GAP -> !joint;
            case OPPOSITION_SCORE, WEB_SPAN -> measure.site().code().equals("thumb");
            default -> false;
        };
    }

    private static Stream<Reading> allReadings() {
        return measures()
                .flatMap(measure -> Stream.concat(numbers().flatMap(number -> values(measure, number)), withoutNumber())
                        .map(value -> new Reading(Side.LEFT, measure, Mode.PASSIVE, value, Placement.UNSTATED)));
    }

    private static Stream<Measure> measures() {
        return Sites.standard().all().stream()
                .flatMap(info -> Stream.of(Motion.values()).map(motion -> new Measure(info.site(), motion)));
    }

    private static Stream<BigDecimal> numbers() {
        return IntStream.rangeClosed(0, 180)
                .boxed()
                .flatMap(whole -> Stream.of(BigDecimal.valueOf(whole), new BigDecimal(whole + ".5")))
                .filter(number -> number.compareTo(BigDecimal.valueOf(180)) <= 0);
    }

    private static Stream<Value> values(Measure measure, BigDecimal number) {
        List<Value> values = new ArrayList<>();
        if (measure.dimension() == Dimension.ANGLE || measure.dimension() == Dimension.EXTENSION) {
            values.add(new Value.Angle(number));
        }
        if (measure.dimension() == Dimension.EXTENSION) {
            values.add(Value.Extension.deficit(number.toPlainString()));
            values.add(Value.Extension.hyperextension(number.toPlainString()));
        }
        for (LengthUnit unit : LengthUnit.values()) {
            if (measure.dimension() == Dimension.GAP) {
                values.add(new Value.Gap(new Distance(number, unit)));
            } else if (measure.dimension() == Dimension.SPAN) {
                values.add(new Value.Span(new Distance(number, unit)));
            }
        }
        if (measure.dimension() == Dimension.SCORE && number.scale() == 0 && number.intValue() <= 10) {
            values.add(new Value.Score(number.intValue()));
        }
        return values.stream();
    }

    private static Stream<Value> withoutNumber() {
        return Stream.concat(
                Stream.of(Value.NotTestedReason.values()).map(Value.NotTested::new),
                Stream.of(Value.Phrase.values()).map(Value.Unquantified::new));
    }

    private static List<Remark> allRemarks() {
        List<Remark> remarks = new ArrayList<>();
        for (Remark.PainPlace place : Remark.PainPlace.values()) {
            remarks.add(new Remark.Pain(place, OptionalInt.empty()));
            remarks.add(new Remark.Pain(place, OptionalInt.of(10)));
        }
        Stream.of(Remark.Feel.values()).map(Remark.Quality::new).forEach(remarks::add);
        remarks.add(new Remark.Note("came in late"));
        return remarks;
    }

    private static String shortly(String site, Motion motion, Value value) {
        Reading reading = reading(Side.RIGHT, site, motion, Mode.ACTIVE, value);
        return SpokenReadback.of(reading, List.of(), FeedbackLevel.SHORT, Optional.of(reading.slot()))
                .text();
    }

    private static Reading reading(Side side, String site, Motion motion, Mode mode, Value value) {
        return new Reading(side, Measure.of(site, motion), mode, value, Placement.UNSTATED);
    }

    private static Value gap(String amount, LengthUnit unit) {
        return new Value.Gap(Distance.of(amount, unit));
    }
}
