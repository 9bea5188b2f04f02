package org.arcsay.tables;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigDecimal;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import org.arcsay.model.Measure;
import org.arcsay.model.Mode;
import org.arcsay.model.Motion;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class TableTest {
    private static final String HEAD = "measure\tmode\tnumber\tmark\tsource\n";

    private static Table table(String... lines) {
        return Table.read("own", HEAD + String.join("\n", lines) + "\n");
    }

    private static String refusal(Function<Row, ?> reader, String... lines) {
        return assertThrows(TableException.class, () -> table(lines).map(reader))
                .getMessage();
    }

    @Test
    void remarksAndEmptyLinesAreLeftOut() {
        Table table = table("# remark", "IP:FLEXION\tany\t5\tseen\tsomebody", "", "MP:FLEXION\tany\t6\tseen\tsomebody");
        assertEquals(List.of("IP:FLEXION", "MP:FLEXION"), table.map(row -> row.text("measure")));
    }

    @Test
    void cellsThatHoldNothing() {
        Table table = table("IP:FLEXION\tany\t-\tseen\t ");
        assertEquals(List.of(Optional.empty()), table.map(row -> row.optionalNumber("number")));
        assertEquals(List.of(Optional.empty()), table.map(row -> row.optional("source")));
        assertEquals(List.of(Optional.empty()), table.map(row -> row.optional("no such column")));
        assertEquals(
                "Line 2 of the table own cannot be used: 'number' is empty.",
                refusal(row -> row.number("number"), "IP:FLEXION\tany\t-\tseen\tx"));
    }

    @Test
    void quotesAreTextAndNumbersAreExact() {
        Table table = table("\"IP\"\tany\t10.60\tseen\tx");
        assertEquals(List.of("\"IP\""), table.map(row -> row.text("measure")));
        assertEquals(List.of(new BigDecimal("10.60")), table.map(row -> row.number("number")));
    }

    @Test
    void badNumberNamesLineAndColumn() {
        assertEquals(
                "Line 4 of the table own cannot be used: 'number' must be a number, not 'five'.",
                refusal(
                        row -> row.number("number"),
                        "# remark",
                        "IP:FLEXION\tany\t4\tseen\tx",
                        "IP:FLEXION\tany\tfive\tseen\tx"));
    }

    @ParameterizedTest
    @CsvSource({
        "FLEXION, any, SITE:MOTION",
        ":FLEXION, any, SITE:MOTION",
        "IP:BENDING, any, 'BENDING'",
        "IP:FLEXION, both, 'active, passive or any'"
    })
    void badMeasureOrModeIsNamed(String measure, String mode, String hint) {
        String message = refusal(MeasurePattern::read, measure + "\t" + mode + "\t1\tseen\tx");
        assertTrue(message.contains(hint), message);
    }

    @Test
    void unknownMarkAndMissingSourceAreRefused() {
        assertTrue(refusal(Row::provenance, "IP:FLEXION\tany\t1\tguessed\tx").startsWith("Line 2 of the table own"));
        assertTrue(refusal(Row::provenance, "IP:FLEXION\tany\t1\tseen\t-").contains("'source' is empty"));
        assertThrows(IllegalArgumentException.class, () -> new Provenance(Mark.SEEN, " "));
    }

    @Test
    void rememberedValuesAreNeverWordedAsCited() {
        assertEquals("Somebody 1990 (seen in the source)", new Provenance(Mark.SEEN, "Somebody 1990").words());
        assertEquals(
                "from memory, not verified: Somebody 1990", new Provenance(Mark.FROM_MEMORY, "Somebody 1990").words());
        assertTrue(Mark.SECOND_SOURCE.citable());
        assertFalse(Mark.COMMON_PRACTICE.citable());
        assertFalse(Mark.OUR_DEFAULT.citable());
    }

    @Test
    void missingTableAndBrokenTableAreNamed() {
        String missing = assertThrows(TableException.class, () -> Table.shipped("nothing.tsv"))
                .getMessage();
        assertEquals("The table nothing.tsv is missing from the program; install it again.", missing);
        assertTrue(assertThrows(TableException.class, () -> Table.read("own", "a\ta\n1\t2\n"))
                .getMessage()
                .startsWith("The table own cannot be read: "));
    }

    @Test
    void closestLineWins() {
        List<MeasurePattern> lines = table(
                        "*:FLEXION\tany\t1\tseen\tx",
                        "*:FLEXION\tpassive\t1\tseen\tx",
                        "IP:FLEXION\tany\t1\tseen\tx",
                        "IP:FLEXION\tactive\t1\tseen\tx")
                .map(MeasurePattern::read);
        assertEquals(Optional.of(lines.get(3)), closest(lines, "IP", Mode.ACTIVE));
        assertEquals(Optional.of(lines.get(2)), closest(lines, "IP", Mode.PASSIVE));
        assertEquals(Optional.of(lines.get(1)), closest(lines, "index PIP", Mode.PASSIVE));
        assertEquals(Optional.of(lines.get(0)), closest(lines, "index PIP", Mode.ACTIVE));
        assertEquals(
                Optional.empty(),
                MeasurePattern.closest(lines.stream(), line -> line, Measure.of("IP", Motion.EXTENSION), Mode.ACTIVE));
    }

    @Test
    void groupsKeepTheOrderOfTheTable() {
        Table table = table("b\tany\t1\tseen\tx", "a\tany\t2\tseen\tx", "b\tany\t3\tseen\tx");
        assertEquals(List.of("b", "a"), List.copyOf(table.groups("measure").keySet()));
        assertEquals(2, table.groups("measure").get("b").size());
    }

    private static Optional<MeasurePattern> closest(List<MeasurePattern> lines, String site, Mode mode) {
        return MeasurePattern.closest(lines.stream(), line -> line, Measure.of(site, Motion.FLEXION), mode);
    }
}
