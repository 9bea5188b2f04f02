package org.arcsay.recogniser;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.SortedSet;
import java.util.TreeSet;
import org.arcsay.grammar.WordGraph;
import org.arcsay.model.Word;

/**
 * A word graph as the decoder takes it, with a way round it: any other sequence of the model's words and unknown sounds
 * is possible at a cost, so that speech outside the grammar is heard as such, and so is nothing at all, so that silence
 * does not have to become a word. Immutable, for any thread.
 *
 * @param fst content of a {@code Gr.fst} file
 * @param missingWords words that the model lacks, sorted; sentences with them cannot be heard
 */
record GrammarGraph(byte[] fst, List<String> missingWords) {
    /**
     * Compiles a grammar for one model.
     *
     * @throws ModelException when the model lacks so many words that no sentence is left, or has no unknown word
     */
    static GrammarGraph compile(WordGraph grammar, Map<String, Integer> wordIds, GraphCosts costs)
            throws ModelException {
        if (!wordIds.containsKey(Word.UNKNOWN)) {
            throw new ModelException("The speech model has no word " + Word.UNKNOWN
                    + " for unknown sounds, so it would turn every noise into a reading. Use another model.");
        }
        SortedSet<String> missing = new TreeSet<>();
        boolean[] useful = usefulStates(grammar, wordIds, missing);
        if (!useful[grammar.start()]) {
            throw new ModelException("The speech model lacks so many words that nothing of the spoken grammar is left ("
                    + String.join(", ", missing) + "). Use another model.");
        }
        return new GrammarGraph(write(grammar, useful, wordIds, costs), List.copyOf(missing));
    }

    /** States from which a sentence can still be ended with the model's words. */
    private static boolean[] usefulStates(WordGraph grammar, Map<String, Integer> wordIds, SortedSet<String> missing) {
        List<WordGraph.State> states = grammar.states();
        boolean[] useful = new boolean[states.size()];
        boolean changed = true;
        while (changed) {
            changed = false;
            for (int i = states.size() - 1; i >= 0; i--) {
                WordGraph.State state = states.get(i);
                if (!useful[i] && (state.accepting() || leadsOn(state, useful, wordIds, missing))) {
                    useful[i] = true;
                    changed = true;
                }
            }
        }
        return useful;
    }

    private static boolean leadsOn(
            WordGraph.State state, boolean[] useful, Map<String, Integer> wordIds, SortedSet<String> missing) {
        boolean leads = false;
        for (Map.Entry<String, Integer> arc : state.arcs().entrySet()) {
            if (!wordIds.containsKey(arc.getKey())) {
                missing.add(arc.getKey());
            } else {
                leads |= useful[arc.getValue()];
            }
        }
        return leads;
    }

    private static byte[] write(WordGraph grammar, boolean[] useful, Map<String, Integer> wordIds, GraphCosts costs) {
        int other = grammar.states().size();
        FstWriter fst = new FstWriter(other + 1, grammar.start());
        for (int i = 0; i < other; i++) {
            WordGraph.State state = grammar.states().get(i);
            if (state.accepting()) {
                fst.accept(i);
            }
            writeArcs(fst, i, arcsOn(state, useful, wordIds), state.accepting(), wordIds, costs);
            if (i != grammar.start() && useful[i]) {
                fst.silentArc(i, costs.leaving(), other);
            }
        }
        fst.accept(grammar.start());
        fst.accept(other);
        writeOtherWords(fst, grammar.start(), other, wordIds, costs);
        writeOtherWords(fst, other, other, wordIds, costs);
        return fst.acceptor();
    }

    private static void writeArcs(
            FstWriter fst,
            int from,
            List<Map.Entry<String, Integer>> arcs,
            boolean maybeEnd,
            Map<String, Integer> wordIds,
            GraphCosts costs) {
        double cost = costs.branching() * Math.log(arcs.size() + (maybeEnd ? 1 : 0));
        for (Map.Entry<String, Integer> arc : arcs) {
            fst.arc(from, Objects.requireNonNull(wordIds.get(arc.getKey()), arc.getKey()), cost, arc.getValue());
        }
    }

    private static void writeOtherWords(
            FstWriter fst, int from, int other, Map<String, Integer> wordIds, GraphCosts costs) {
        wordIds.forEach((word, id) -> {
            if (word.equals(Word.UNKNOWN)) {
                fst.arc(from, id, costs.unknownWord(), other);
            } else if (ModelFolder.isSpoken(word)) {
                fst.arc(from, id, costs.otherWord(), other);
            }
        });
    }

    private static List<Map.Entry<String, Integer>> arcsOn(
            WordGraph.State state, boolean[] useful, Map<String, Integer> wordIds) {
        List<Map.Entry<String, Integer>> arcs = new ArrayList<>();
        for (Map.Entry<String, Integer> arc : state.arcs().entrySet()) {
            if (wordIds.containsKey(arc.getKey()) && useful[arc.getValue()]) {
                arcs.add(arc);
            }
        }
        return arcs;
    }
}
