package org.arcsay.grammar;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;

class SpokenGrammarTest {
    private final SpokenGrammar grammar = SpokenGrammar.standard();

    @Test
    void noSentenceOfTheWholeLanguageHasTwoMeanings() {
        assertEquals(List.of(), grammar.ambiguities(20));
    }

    @Test
    void sizes() {
        long t = System.nanoTime();
        WordGraph g = grammar.graph();
        System.out.println("states " + g.states().size() + " arcs " + g.states().stream().mapToInt(s -> s.arcs().size()).sum() + " ms " + (System.nanoTime() - t) / 1000000);
        t = System.nanoTime();
        SpokenGrammar.standard();
        System.out.println("load ms " + (System.nanoTime() - t) / 1000000);
        t = System.nanoTime();
        for (int i = 0; i < 1000; i++) grammar.meanings(List.of("right", "thumb", "m", "p", "flexion", "seventy", "five", "degrees"));
        System.out.println("match us " + (System.nanoTime() - t) / 1000000);
        System.out.println(grammar.meanings(List.of("right", "thumb", "m", "p", "flexion", "seventy", "five", "degrees")));
    }
}
