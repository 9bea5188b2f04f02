package org.arcsay.model;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.arcsay.model.Value.NotTestedReason;
import org.arcsay.model.Value.Phrase;
import org.arcsay.model.ValueForm.Kind;
import org.junit.jupiter.api.Test;

class ValueFormTest {
    private static List<Value> values() {
        List<Value> values = new ArrayList<>(List.of(
                Value.Angle.of(75),
                Value.Angle.of("12.5"),
                Value.Extension.deficit("15"),
                Value.Extension.neutral(),
                Value.Extension.hyperextension("10"),
                new Value.Score(0),
                new Value.Score(10)));
        for (LengthUnit unit : LengthUnit.values()) {
            values.add(new Value.Gap(new Distance(new BigDecimal("1.50"), unit)));
            values.add(new Value.Span(new Distance(BigDecimal.TEN, unit)));
        }
        Arrays.stream(NotTestedReason.values()).map(Value.NotTested::new).forEach(values::add);
        Arrays.stream(Phrase.values()).map(Value.Unquantified::new).forEach(values::add);
        return values;
    }

    @Test
    void everyValueIsMadeOfItsPartsAgain() {
        Set<Kind> seen = EnumSet.noneOf(Kind.class);
        for (Value value : values()) {
            ValueForm form = ValueForm.of(value);
            assertEquals(value, form.value());
            seen.add(form.kind());
        }
        assertEquals(EnumSet.allOf(Kind.class), seen);
    }

    @Test
    void aDirectionIsAKindAndTheNumberHasNoSign() {
        ValueForm lacks = ValueForm.of(Value.Extension.deficit("15"));
        assertEquals(Kind.DEFICIT, lacks.kind());
        assertEquals(Optional.of(new BigDecimal("15")), lacks.number());
        assertEquals(
                Kind.HYPEREXTENSION,
                ValueForm.of(Value.Extension.hyperextension("15")).kind());
    }

    @Test
    void onlyLengthsHaveAUnitAndOnlyWordsHaveNoNumber() {
        for (Value value : values()) {
            ValueForm form = ValueForm.of(value);
            assertEquals(form.kind().isLength(), form.length().isPresent(), value.words());
            assertEquals(form.word().isEmpty(), form.number().isPresent(), value.words());
        }
    }

    @Test
    void aMissingPartIsRefused() {
        for (Kind kind : Kind.values()) {
            ValueForm bare = new ValueForm(kind, Optional.empty(), Optional.empty(), Optional.empty());
            assertThrows(IllegalArgumentException.class, bare::value, kind.name());
        }
    }
}
