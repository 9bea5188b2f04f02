package org.arcsay.review;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.arcsay.model.ClinicSettings;
import org.arcsay.model.Distance;
import org.arcsay.model.LengthUnit;
import org.arcsay.model.Measure;
import org.arcsay.model.Motion;
import org.arcsay.model.SignConvention;
import org.arcsay.model.Value;
import org.arcsay.model.Value.Angle;
import org.arcsay.model.Value.Extension;
import org.arcsay.model.Value.Gap;
import org.arcsay.model.Value.NotTested;
import org.arcsay.model.Value.NotTestedReason;
import org.arcsay.model.Value.Phrase;
import org.arcsay.model.Value.Score;
import org.arcsay.model.Value.Span;
import org.arcsay.model.Value.Unquantified;
import org.arcsay.review.TypedValue.Result;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class TypedValueTest {
    private static final ClinicSettings DEFAULTS = ClinicSettings.defaults();
    private static final Measure FLEXION = Measure.of("IP", Motion.FLEXION);
    private static final Measure EXTENSION = Measure.of("IP", Motion.EXTENSION);
    private static final Measure CMC_EXTENSION = Measure.of("CMC", Motion.EXTENSION);
    private static final Measure GAP = Measure.of("ring tip", Motion.OPPOSITION_GAP);
    private static final Measure SPAN = Measure.of("thumb", Motion.WEB_SPAN);
    private static final Measure SCORE = Measure.of("thumb", Motion.OPPOSITION_SCORE);

    @ParameterizedTest
    @ValueSource(strings = {"75", " 75 ", "75 degrees", "75deg", "75\u00b0", "75 d", "75.0", "75,0"})
    void anAngleIsItsDegrees(String text) {
        assertEquals(Angle.of(75), value(text, FLEXION));
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "lacks 10",
                "Lacks 10 degrees",
                "10 deficit",
                "deficit 10",
                "10 lag",
                "lag of 10\u00b0",
                "lack 10"
            })
    void aDeficitIsSaidInWords(String text) {
        assertEquals(Extension.deficit("10"), value(text, EXTENSION));
    }

    @ParameterizedTest
    @ValueSource(
            strings = {"hyper 10", "10 hyper", "hyperextends 10", "hyperextends by 10 degrees", "10 hyperextension"})
    void hyperextensionIsSaidInWords(String text) {
        assertEquals(Extension.hyperextension("10"), value(text, EXTENSION));
    }

    @ParameterizedTest
    @ValueSource(strings = {"neutral", "0", "0 degrees", "lacks 0", "hyper 0", "-0", "straight"})
    void zeroExtensionIsNeutral(String text) {
        assertEquals(Extension.neutral(), value(text, EXTENSION));
    }

    @ParameterizedTest
    @CsvSource({
        "MINUS_IS_DEFICIT, -10, DEFICIT",
        "MINUS_IS_DEFICIT, minus 10, DEFICIT",
        "MINUS_IS_DEFICIT, \u221210, DEFICIT",
        "MINUS_IS_DEFICIT, +10, HYPEREXTENSION",
        "MINUS_IS_HYPEREXTENSION, -10, HYPEREXTENSION",
        "MINUS_IS_HYPEREXTENSION, plus 10, DEFICIT"
    })
    void aBareSignFollowsTheClinicsConvention(SignConvention convention, String text, Value.ExtensionKind kind) {
        ClinicSettings settings = new ClinicSettings(convention, LengthUnit.MILLIMETRE);
        Result result = TypedValue.read(text, EXTENSION, settings);
        Value value = assertInstanceOf(Result.Understood.class, result).value();
        assertEquals(kind, assertInstanceOf(Extension.class, value).kind());
    }

    @Test
    void aBareSignIsNotGuessedWithoutAConvention() {
        assertEquals(
                "Plus and minus mean opposite things in different clinics. Type 'lacks 10' or 'hyper 10'.",
                problem("-10", EXTENSION));
    }

    @Test
    void aBareExtensionNeedsItsSideOfNeutralUnlessExtensionIsNaturalThere() {
        assertEquals("Say on which side of neutral: type 'lacks 20' or 'hyper 20'.", problem("20", EXTENSION));
        assertEquals(Angle.of(20), value("20", CMC_EXTENSION));
    }

    @ParameterizedTest
    @CsvSource({
        "38 mm, 38, MILLIMETRE",
        "38mm, 38, MILLIMETRE",
        "38, 38, MILLIMETRE",
        "3.8 cm, 3.8, CENTIMETRE",
        "'3,8 cm', 3.8, CENTIMETRE",
        "1.5 inches, 1.5, INCH",
        "touches, 0, MILLIMETRE",
        "0 cm, 0, CENTIMETRE"
    })
    void aGapKeepsTheUnitThatWasTyped(String text, String amount, LengthUnit unit) {
        assertEquals(new Gap(Distance.of(amount, unit)), value(text, GAP));
    }

    @Test
    void aLengthWithoutAUnitHasTheClinicsUnit() {
        ClinicSettings inches = new ClinicSettings(SignConvention.UNSET, LengthUnit.CENTIMETRE);
        assertEquals(
                new Result.Understood(new Span(Distance.of("4.5", LengthUnit.CENTIMETRE))),
                TypedValue.read("4.5", SPAN, inches));
    }

    @ParameterizedTest
    @ValueSource(strings = {"7", "7/10", "7 of 10", "7 points"})
    void aScoreIsAWholeNumber(String text) {
        assertEquals(new Score(7), value(text, SCORE));
    }

    @Test
    void whatWasNotTestedNamesItsReason() {
        assertEquals(new NotTested(NotTestedReason.PAIN), value("not tested: pain", FLEXION));
        assertEquals(new NotTested(NotTestedReason.SPLINT), value("not tested because of splint", GAP));
        assertEquals(new NotTested(NotTestedReason.UNABLE), value("unable", SCORE));
        assertEquals(new NotTested(NotTestedReason.UNSTATED), value("not tested", FLEXION));
        assertEquals(
                "'tired' is not one of the reasons: pain, wound, pin, splint, protocol, declined, unable.",
                problem("not tested: tired", FLEXION));
    }

    @Test
    void wordsWithoutANumberStayWords() {
        assertEquals(new Unquantified(Phrase.FULL), value("full", FLEXION));
        assertEquals(new Unquantified(Phrase.WITHIN_NORMAL_LIMITS), value("within normal limits", FLEXION));
    }

    @Test
    void everyRefusalSaysWhatToTypeInstead() {
        assertEquals("Type a value, for example '75'.", problem("  ", FLEXION));
        assertEquals("An angle must be between 0 and 180, not 750.", problem("750", FLEXION));
        assertEquals("A distance must be between 0 and 999, not 1000.", problem("1000 mm", GAP));
        assertEquals("An opposition score is 0 to 10, not 11.", problem("11", SCORE));
        assertEquals("IP flexion is measured in degrees; '38 mm' is not. Type '75'.", problem("38 mm", FLEXION));
        assertEquals(
                "Opposition to ring tip is measured in mm, cm or in; '38 degrees' is not. "
                        + "Type '38 mm', '3.8 cm' or 'touches'.",
                problem("38 degrees", GAP));
        assertTrue(problem("-75", FLEXION).contains("has no sign"));
        assertTrue(problem("-3 mm", GAP).contains("'38 mm'"));
        assertTrue(problem("7.5", SCORE).contains("whole number"));
        assertTrue(problem("touches", SPAN).contains("'45 mm'"));
        assertTrue(problem("7O", FLEXION).contains("'7o' is not a value"));
        assertTrue(problem("lacks 10", FLEXION).contains("not a value for IP flexion"));
    }

    @Test
    void everyValueCanBeTypedAsItIsOffered() {
        for (Value angle : List.of(Angle.of(0), Angle.of("75.5"), Angle.of(180))) {
            assertEquals(angle, value(TypedValue.text(angle), FLEXION));
        }
        for (Value extension :
                List.of(Extension.neutral(), Extension.deficit("12.5"), Extension.hyperextension("30"))) {
            assertEquals(extension, value(TypedValue.text(extension), EXTENSION));
        }
        for (LengthUnit unit : LengthUnit.values()) {
            for (String amount : List.of("0", "3.8", "120")) {
                Distance distance = Distance.of(amount, unit);
                assertEquals(new Gap(distance), value(TypedValue.text(new Gap(distance)), GAP));
                assertEquals(new Span(distance), value(TypedValue.text(new Span(distance)), SPAN));
            }
        }
        for (int points = 0; points <= 10; points++) {
            assertEquals(new Score(points), value(TypedValue.text(new Score(points)), SCORE));
        }
        for (Value words : wordsOnly()) {
            assertEquals(words, value(TypedValue.text(words), GAP));
        }
    }

    @Test
    void randomTextNeverFailsAndNeverBecomesANumberThatWasNotTyped() {
        Random random = new Random(20260304);
        String letters = "0123456789 -+.,lackshypermincd\u00b0/%";
        for (int round = 0; round < 20_000; round++) {
            StringBuilder text = new StringBuilder();
            for (int length = random.nextInt(12); length > 0; length--) {
                text.append(letters.charAt(random.nextInt(letters.length())));
            }
            Result result = TypedValue.read(text.toString(), EXTENSION, DEFAULTS);
            if (result instanceof Result.Understood understood && understood.value() instanceof Extension extension) {
                String digits = extension.degrees().toPlainString();
                assertTrue(
                        extension.degrees().signum() == 0
                                || text.toString().replace(',', '.').contains(digits),
                        () -> text + " became " + extension.words());
            } else if (result instanceof Result.NotUnderstood not) {
                assertFalse(not.message().isBlank());
            }
        }
    }

    private static List<Value> wordsOnly() {
        List<Value> values = new ArrayList<>();
        for (NotTestedReason reason : NotTestedReason.values()) {
            values.add(new NotTested(reason));
        }
        for (Phrase phrase : Phrase.values()) {
            values.add(new Unquantified(phrase));
        }
        return values;
    }

    private static Value value(String text, Measure measure) {
        Result result = TypedValue.read(text, measure, DEFAULTS);
        return assertInstanceOf(Result.Understood.class, result, result.toString())
                .value();
    }

    private static String problem(String text, Measure measure) {
        Result result = TypedValue.read(text, measure, DEFAULTS);
        return assertInstanceOf(Result.NotUnderstood.class, result, result.toString())
                .message();
    }
}
