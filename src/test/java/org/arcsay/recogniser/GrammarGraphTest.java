package org.arcsay.recogniser;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.arcsay.grammar.WordGraph;
import org.arcsay.grammar.WordGraph.State;
import org.junit.jupiter.api.Test;

/** Reads the written graph back and walks it; that the decoder takes it is shown by {@link VoskRecogniserTest}. */
final class GrammarGraphTest {
    private static final int HEADER = 65;
    private static final GraphCosts COSTS = new GraphCosts(1, 3, 5, 2);
    private static final Map<String, Integer> WORDS =
            Map.of("<eps>", 0, "flexion", 3, "lag", 2, "ten", 7, "uh", 9, "[unk]", 4, "#0", 11);

    private record Arc(int label, float cost, int target) {}

    /** flexion ten, lag ten, flexion. */
    private static WordGraph grammar(String second) {
        return new WordGraph(
                0,
                List.of(
                        new State(false, new TreeMap<>(Map.of("flexion", 1, second, 2))),
                        new State(true, new TreeMap<>(Map.of("ten", 3))),
                        new State(false, new TreeMap<>(Map.of("ten", 3))),
                        new State(true, new TreeMap<>())));
    }

    private static Map<Integer, List<Arc>> arcs(byte[] fst) {
        ByteBuffer in = ByteBuffer.wrap(fst).order(ByteOrder.LITTLE_ENDIAN);
        int states = (int) in.getLong(HEADER - 16);
        Map<Integer, List<Arc>> arcs = new HashMap<>();
        for (int i = 0; i < states; i++) {
            int state = HEADER + i * 20;
            List<Arc> out = new ArrayList<>();
            for (int j = 0; j < in.getInt(state + 8); j++) {
                int arc = HEADER + states * 20 + (in.getInt(state + 4) + j) * 16;
                out.add(new Arc(in.getInt(arc), in.getFloat(arc + 8), in.getInt(arc + 12)));
            }
            arcs.put(i, out);
        }
        return arcs;
    }

    private static boolean accepting(byte[] fst, int state) {
        return ByteBuffer.wrap(fst).order(ByteOrder.LITTLE_ENDIAN).getFloat(HEADER + state * 20) == 0;
    }

    @Test
    void sharesProbabilityAmongTheWaysOn() throws Exception {
        GrammarGraph graph = GrammarGraph.compile(grammar("lag"), WORDS, COSTS);
        Map<Integer, List<Arc>> arcs = arcs(graph.fst());
        assertTrue(arcs.get(0).contains(new Arc(3, (float) Math.log(2), 1)));
        assertTrue(arcs.get(0).contains(new Arc(2, (float) Math.log(2), 2)));
        assertTrue(arcs.get(1).contains(new Arc(7, (float) Math.log(2), 3)), "to end is a way on, too");
        assertTrue(arcs.get(2).contains(new Arc(7, 0, 3)));
        assertEquals(List.of(), graph.missingWords());
    }

    @Test
    void letsSpeechLeaveTheGrammarAnywhereAtItsCost() throws Exception {
        Map<Integer, List<Arc>> arcs =
                arcs(GrammarGraph.compile(grammar("lag"), WORDS, COSTS).fst());
        int other = 4;
        for (int from : new int[] {0, other}) {
            assertTrue(arcs.get(from).contains(new Arc(4, 3, other)));
            for (int word : new int[] {2, 3, 7, 9}) {
                assertTrue(arcs.get(from).contains(new Arc(word, 5, other)));
            }
        }
        for (int from = 1; from < other; from++) {
            assertTrue(arcs.get(from).contains(new Arc(0, 2, other)));
        }
        assertTrue(arcs.values().stream().flatMap(List::stream).noneMatch(arc -> arc.label() == 11));
    }

    @Test
    void endsWhereSentencesEndAndInSilence() throws Exception {
        byte[] fst = GrammarGraph.compile(grammar("lag"), WORDS, COSTS).fst();
        assertTrue(accepting(fst, 0) && accepting(fst, 1) && accepting(fst, 3) && accepting(fst, 4));
        assertTrue(!accepting(fst, 2));
    }

    @Test
    void sortsArcsByWord() throws Exception {
        arcs(GrammarGraph.compile(grammar("lag"), WORDS, COSTS).fst()).values().forEach(out -> {
            List<Integer> labels = out.stream().map(Arc::label).toList();
            assertEquals(labels.stream().sorted().toList(), labels);
        });
    }

    @Test
    void leavesOutSentencesWithUnknownWordsAndNamesTheWords() throws Exception {
        GrammarGraph graph = GrammarGraph.compile(grammar("hyperextension"), WORDS, COSTS);
        assertEquals(List.of("hyperextension"), graph.missingWords());
        List<Arc> first = arcs(graph.fst()).get(0);
        assertTrue(first.contains(new Arc(3, 0, 1)));
        assertTrue(first.stream().noneMatch(arc -> arc.target() == 2));
    }

    @Test
    void leavesOutBeginningsThatCannotBeFinished() throws Exception {
        WordGraph grammar = new WordGraph(
                0,
                List.of(
                        new State(false, new TreeMap<>(Map.of("lag", 1, "ten", 2))),
                        new State(false, new TreeMap<>(Map.of("nowhere", 2))),
                        new State(true, new TreeMap<>())));
        GrammarGraph graph = GrammarGraph.compile(grammar, WORDS, COSTS);
        assertTrue(arcs(graph.fst()).get(0).stream().noneMatch(arc -> arc.target() == 1));
        assertEquals(List.of("nowhere"), graph.missingWords());
    }

    @Test
    void refusesModelThatCannotRefuseOrKnowsNothing() {
        String mute = assertThrows(
                        ModelException.class, () -> GrammarGraph.compile(grammar("lag"), Map.of("flexion", 1), COSTS))
                .getMessage();
        assertTrue(mute.contains("[unk]"), mute);
        String ignorant = assertThrows(
                        ModelException.class, () -> GrammarGraph.compile(grammar("lag"), Map.of("[unk]", 1), COSTS))
                .getMessage();
        assertTrue(ignorant.contains("flexion, lag"), ignorant);
    }
}
