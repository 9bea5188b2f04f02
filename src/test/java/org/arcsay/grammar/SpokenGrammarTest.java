package org.arcsay.grammar;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigInteger;
import java.util.Arrays;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.arcsay.model.HelpCard;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class SpokenGrammarTest {
    private static final SpokenGrammar GRAMMAR = SpokenGrammar.standard();
    private static final WordGraph GRAPH = GRAMMAR.graph();

    @Test
    void noSentenceOfTheWholeLanguageHasTwoMeanings() {
        assertEquals(List.of(), GRAMMAR.ambiguities(20));
    }

    @Test
    void theAmbiguityCheckFindsAPlantedAmbiguity() throws GrammarException {
        SpokenGrammar planted = SpokenGrammar.parse(
                "#JSGF V1.0;\ngrammar g;\npublic <u> = go [on] home {act:A} | go on (home | house) {act:B};");
        assertEquals(List.of("go on home"), planted.ambiguities(5));
    }

    @Test
    void everySentenceOfARandomSampleHasOneMeaningThatCanBeSpelledBack() {
        RandomSentences sentences = new RandomSentences(GRAPH, 20261125);
        for (int i = 0; i < 20_000; i++) {
            List<String> words = sentences.next();
            Set<List<Tag>> meanings = GRAMMAR.meanings(words);
            assertEquals(1, meanings.size(), () -> words + " means " + meanings);
            List<Tag> meaning = meanings.iterator().next();
            List<String> spelled = GRAMMAR.spell(meaning).orElseThrow();
            assertEquals(Set.of(meaning), GRAMMAR.meanings(spelled), () -> words + " was spelled " + spelled);
        }
    }

    @Test
    void everyWayOfSayingEveryNumberIsUnderstoodInEveryKindOfReading() {
        List<String> frames = List.of(
                "i p flexion %s",
                "passive m p hyperextension %s degrees",
                "i p lacks %s degrees of extension",
                "left radial abduction %s",
                "opposition ring %s millimeters",
                "correction %s",
                "m p %s",
                "i p extension lag %s",
                "no %s",
                "m p zero to %s");
        int tried = 0;
        for (String frame : frames) {
            for (int number = 0; number <= SpokenNumbers.HIGHEST; number++) {
                for (List<String> form : SpokenNumbers.whole(number)) {
                    List<String> words =
                            List.of(String.format(frame, String.join(" ", form)).split(" "));
                    Set<List<Tag>> meanings = GRAMMAR.meanings(words);
                    assertEquals(1, meanings.size(), () -> words + " means " + meanings);
                    assertTrue(
                            meanings.iterator().next().contains(new Tag("number", String.valueOf(number))),
                            words::toString);
                    tried++;
                }
            }
        }
        assertTrue(tried > 5_000, "only " + tried + " numbers tried");
    }

    @Test
    void theGraphAcceptsExactlyWhatTheMatcherUnderstands() {
        RandomSentences sentences = new RandomSentences(GRAPH, 7);
        for (int i = 0; i < 5_000; i++) {
            List<String> words = sentences.next();
            List<String> cut = words.subList(0, words.size() - 1);
            assertEquals(accepts(cut), !GRAMMAR.meanings(cut).isEmpty(), cut::toString);
        }
    }

    private static boolean accepts(List<String> words) {
        Integer state = GRAPH.start();
        for (String word : words) {
            state = GRAPH.states().get(state).arcs().get(word);
            if (state == null) {
                return false;
            }
        }
        return GRAPH.states().get(state).accepting();
    }

    @Test
    void theGraphHasNoStateFromWhichNoSentenceEndsAndCountsItsSentences() {
        Map<Integer, BigInteger> counts = new HashMap<>();
        BigInteger sentences = count(GRAPH.start(), counts);
        assertEquals(GRAPH.states().size(), counts.size(), "unreachable states");
        assertFalse(counts.containsValue(BigInteger.ZERO));
        assertTrue(sentences.bitLength() > 30, () -> "the language has only " + sentences + " sentences");
    }

    private static BigInteger count(int state, Map<Integer, BigInteger> counts) {
        BigInteger known = counts.get(state);
        if (known != null) {
            return known;
        }
        BigInteger sum = GRAPH.states().get(state).accepting() ? BigInteger.ONE : BigInteger.ZERO;
        for (int target : GRAPH.states().get(state).arcs().values()) {
            sum = sum.add(count(target, counts));
        }
        counts.put(state, sum);
        return sum;
    }

    @Test
    void everyExampleOfTheHelpCardCanBeSaid() {
        List<HelpCard.Section> sections = GRAMMAR.helpCard().sections();
        assertTrue(sections.size() >= 9);
        for (HelpCard.Section section : sections) {
            assertFalse(section.heading().isBlank());
            assertFalse(section.examples().isEmpty());
            for (String example : section.examples()) {
                assertEquals(1, GRAMMAR.meanings(List.of(example.split(" "))).size(), example);
            }
        }
    }

    @Test
    void aChangedGrammarHasAnotherVersion() throws GrammarException {
        SpokenGrammar one = SpokenGrammar.parse("#JSGF V1.0;\ngrammar g;\npublic <u> = go home {act:A};");
        SpokenGrammar two = SpokenGrammar.parse("#JSGF V1.0;\ngrammar g;\npublic <u> = go house {act:A};");
        assertNotEquals(one.version(), two.version());
        assertEquals(Set.of("go", "home"), new HashSet<>(one.words()));
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
        <u> = a;                                          | begins with
        #JSGF V1.0;@public <u> = (a | b;                  | line 2
        #JSGF V1.0;@public <u> = a <v>;                   | <v> is used and not defined
        #JSGF V1.0;@<u> = a;                              | no public rule
        #JSGF V1.0;@public <u> = a {oops};                | {key:value}
        #JSGF V1.0;@public <u> = <v>;@<v> = b <u>;        | calls itself
        #JSGF V1.0;@public <u> = a;@<u> = b;              | defined twice
        #JSGF V1.0;@public <u> = a {act:X;                | never closed
        #JSGF V1.0;@public <u> = a ] b;                   | expected ';'
        #JSGF V1.0;@public <u> = a & b;                   | unexpected character
        """)
    void aBrokenGrammarFileIsNamedByLineAndReason(String text, String message) {
        GrammarException broken =
                assertThrows(GrammarException.class, () -> SpokenGrammar.parse(text.replace('@', '\n')));
        assertTrue(String.valueOf(broken.getMessage()).contains(message), broken.getMessage());
    }

    @Test
    void numbersAreSaidTheUsualWayAndDigitByDigit() {
        assertEquals(Arrays.asList("one", "hundred", "five"), SpokenNumbers.words(new java.math.BigDecimal("105")));
        assertEquals(List.of("three", "point", "eight"), SpokenNumbers.digits(new java.math.BigDecimal("3.8")));
        assertEquals(List.of("one", "three"), SpokenNumbers.digits(new java.math.BigDecimal("13")));
        assertThrows(IllegalArgumentException.class, () -> SpokenNumbers.words(new java.math.BigDecimal("181")));
        assertThrows(IllegalArgumentException.class, () -> SpokenNumbers.words(new java.math.BigDecimal("3.85")));
    }
}
