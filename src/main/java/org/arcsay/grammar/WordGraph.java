package org.arcsay.grammar;

import java.util.List;
import java.util.SortedMap;

/**
 * All sentences of the grammar as a deterministic, minimal, acyclic acceptor over words.
 *
 * @param start index of the start state
 * @param states every state
 */
public record WordGraph(int start, List<State> states) {
    public WordGraph {
        states = List.copyOf(states);
    }

    /**
     * One state.
     *
     * @param accepting whether a sentence may end here
     * @param arcs next word to next state
     */
    public record State(boolean accepting, SortedMap<String, Integer> arcs) {}
}
