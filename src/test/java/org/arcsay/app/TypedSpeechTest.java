package org.arcsay.app;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;

import java.math.BigDecimal;
import java.util.List;
import org.arcsay.grammar.SpokenGrammar;
import org.arcsay.parser.Command;
import org.arcsay.parser.Parser;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class TypedSpeechTest {
    @ParameterizedTest
    @CsvSource({
        "IP flexion 75, i p flexion seventy five",
        "'MCP extension lag 10\u00b0', m c p extension lag ten degrees",
        "'opposition ring 38mm', opposition ring thirty eight millimeters",
        "'no, 60', no sixty",
        "'3,8 cm', three point eight centimeters",
        "minus 5, minus five",
        "-5, minus five"
    })
    void typingIsLikeSpeaking(String typed, String spoken) {
        assertEquals(List.of(spoken.split(" ")), TypedSpeech.words(typed));
    }

    @Test
    void everyWholeNumberThatCanBeSpokenCanBeTyped() {
        Parser parser = new Parser(SpokenGrammar.standard());
        for (int number = 0; number <= 180; number++) {
            Command command = parser.parse(TypedSpeech.words(String.valueOf(number)));
            assertEquals(
                    0, assertInstanceOf(Command.Number.class, command).number().compareTo(BigDecimal.valueOf(number)));
        }
    }

    @Test
    void aNumberThatCannotBeSpokenIsRefusedAndNotChanged() {
        Parser parser = new Parser(SpokenGrammar.standard());
        for (String typed :
                List.of("ip flexion 750", "ip flexion 75.25", "ip flexion seventyfive", "ip flexion 7 5 5")) {
            assertInstanceOf(Command.Rejected.class, parser.parse(TypedSpeech.words(typed)), typed);
        }
    }
}
