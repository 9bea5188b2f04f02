package org.arcsay.analysis;

import static org.arcsay.analysis.Visits.flexion;
import static org.arcsay.analysis.Visits.hyper;
import static org.arcsay.analysis.Visits.lacks;
import static org.arcsay.analysis.Visits.visit;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Optional;
import org.arcsay.model.Mode;
import org.arcsay.model.Side;
import org.arcsay.model.Site;
import org.arcsay.model.Value.Angle;
import org.arcsay.model.Value.Extension;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;

class NotationTest {
    private static final Arc LACKING = new Arc(Extension.deficit("10"), Angle.of(75));
    private static final Arc STRAIGHT = new Arc(Extension.neutral(), Angle.of(80));
    private static final Arc BEYOND = new Arc(Extension.hyperextension("15"), Angle.of(80));

    @Test
    void everyNotationPrints() {
        assertEquals("lacks 10 degrees, flexes to 75 degrees", Notation.PLAIN_WORDS.print(LACKING));
        assertEquals("10-75", Notation.TWO_NUMBERS.print(LACKING));
        assertEquals("0-80", Notation.TWO_NUMBERS.print(STRAIGHT));
        assertEquals("15-0-80", Notation.TWO_NUMBERS.print(BEYOND));
        assertEquals("0-10-75", Notation.NEUTRAL_ZERO_EXTENSION_FIRST.print(LACKING));
        assertEquals("0-0-80", Notation.NEUTRAL_ZERO_EXTENSION_FIRST.print(STRAIGHT));
        assertEquals("15-0-80", Notation.NEUTRAL_ZERO_EXTENSION_FIRST.print(BEYOND));
        assertEquals("75-10-0", Notation.NEUTRAL_ZERO_FLEXION_FIRST.print(LACKING));
        assertEquals("80-0-0", Notation.NEUTRAL_ZERO_FLEXION_FIRST.print(STRAIGHT));
        assertEquals("80-0-15", Notation.NEUTRAL_ZERO_FLEXION_FIRST.print(BEYOND));
    }

    @ParameterizedTest
    @EnumSource(Notation.class)
    void everyArcReadsBack(Notation notation) {
        for (int straight = -60; straight <= 60; straight += 3) {
            for (int bent = Math.max(0, -straight); bent <= 120; bent += 7) {
                String degrees = Math.abs(straight) + (straight % 2 == 0 ? "" : ".5");
                Extension extension = straight < 0 ? Extension.deficit(degrees) : Extension.hyperextension(degrees);
                Arc arc = new Arc(extension, Angle.of(bent + 1));
                assertEquals(arc, notation.parse(notation.print(arc)), notation.print(arc));
            }
        }
    }

    @ParameterizedTest
    @CsvSource({
        "PLAIN_WORDS, 'lacks ten degrees'",
        "TWO_NUMBERS, 10",
        "TWO_NUMBERS, 10-5-80",
        "TWO_NUMBERS, 10-0-5-80",
        "TWO_NUMBERS, -10-80",
        "TWO_NUMBERS, 1e1-80",
        "TWO_NUMBERS, 80-10",
        "TWO_NUMBERS, 0-181",
        "NEUTRAL_ZERO_EXTENSION_FIRST, 0-80",
        "NEUTRAL_ZERO_EXTENSION_FIRST, 5-10-80",
        "NEUTRAL_ZERO_EXTENSION_FIRST, 20-10-0",
        "NEUTRAL_ZERO_FLEXION_FIRST, 80-0",
        "NEUTRAL_ZERO_FLEXION_FIRST, 0-10-20"
    })
    void whatIsNotInTheNotationIsRefusedWithAReason(Notation notation, String text) {
        IllegalArgumentException refused = assertThrows(IllegalArgumentException.class, () -> notation.parse(text));
        assertTrue(refused.getMessage().startsWith("'" + text + "' is no " + notation.title() + ": "));
    }

    @Test
    void stiffJointHasTwoEqualNumbers() {
        Arc stiff = new Arc(Extension.deficit("20"), Angle.of(20));
        assertEquals(stiff, Notation.NEUTRAL_ZERO_FLEXION_FIRST.parse("20-20-0"));
        assertEquals(stiff, Notation.TWO_NUMBERS.parse("20-20"));
    }

    @Test
    void arcOfAVisitNeedsBothEndsAndNoContradiction() {
        Site ip = new Site("IP");
        assertEquals(
                Optional.of(LACKING),
                Arc.of(visit(lacks("IP", "10"), flexion("IP", "75")), Side.RIGHT, ip, Mode.ACTIVE));
        assertEquals(Optional.empty(), Arc.of(visit(lacks("IP", "10")), Side.RIGHT, ip, Mode.ACTIVE));
        assertEquals(
                Optional.empty(), Arc.of(visit(lacks("IP", "10"), flexion("IP", "5")), Side.RIGHT, ip, Mode.ACTIVE));
        assertEquals(
                Optional.empty(), Arc.of(visit(hyper("IP", "10"), flexion("IP", "5")), Side.LEFT, ip, Mode.ACTIVE));
    }

    @Test
    void aJointThatStaysBeyondNeutralIsRefusedByName() {
        IllegalArgumentException refused = assertThrows(
                IllegalArgumentException.class, () -> Notation.NEUTRAL_ZERO_EXTENSION_FIRST.parse("20-10-0"));
        assertTrue(refused.getMessage().contains("stays beyond neutral"), refused.getMessage());
    }
}
