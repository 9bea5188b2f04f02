package org.arcsay.grammar;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.arcsay.grammar.WordGraph.State;

/** Seeded random walks through a word graph. Used by one thread. */
public final class RandomSentences {
    private final WordGraph graph;
    private final Random random;

    public RandomSentences(WordGraph graph, long seed) {
        this.graph = graph;
        this.random = new Random(seed);
    }

    public List<String> next() {
        List<String> words = new ArrayList<>();
        State state = graph.states().get(graph.start());
        while (true) {
            List<String> choices = new ArrayList<>(state.arcs().keySet());
            if (choices.isEmpty() || state.accepting() && random.nextInt(choices.size() + 1) == 0) {
                return words;
            }
            String word = choices.get(random.nextInt(choices.size()));
            words.add(word);
            state = graph.states().get(state.arcs().get(word));
        }
    }
}
