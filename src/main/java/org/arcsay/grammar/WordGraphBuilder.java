package org.arcsay.grammar;

import java.nio.IntBuffer;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Deque;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.stream.IntStream;
import org.arcsay.grammar.Automaton.Arc;
import org.arcsay.grammar.WordGraph.State;
import org.jspecify.annotations.Nullable;

/**
 * Turns the automaton into the smallest deterministic graph of words in three steps: forget the meanings and merge states
 * that then lead to the same words, make it deterministic by subset construction, and merge equal states again.
 *
 * <p>Used by one thread for one graph.
 */
final class WordGraphBuilder {
    private record Step(@Nullable String word, int target) {}

    private final Automaton automaton;
    private final List<Set<Step>> folded = new ArrayList<>();
    private final Map<Set<Step>, Integer> foldedBySteps = new HashMap<>();
    private final int[] foldedByState;
    private int end = -1;

    /** Graph state by the folded states it stands for, sorted; a buffer compares by content. */
    private final Map<IntBuffer, Integer> built = new HashMap<>();

    private final Map<State, Integer> unique = new HashMap<>();
    private final List<State> states = new ArrayList<>();

    private WordGraphBuilder(Automaton automaton) {
        this.automaton = automaton;
        this.foldedByState =
                IntStream.generate(() -> -1).limit(automaton.size()).toArray();
    }

    static WordGraph build(Automaton automaton) {
        WordGraphBuilder builder = new WordGraphBuilder(automaton);
        int start = builder.fold(Automaton.START);
        return new WordGraph(builder.state(builder.closure(List.of(start))), builder.states);
    }

    /** The language is finite, so the recursions here and below are at most as deep as the longest sentence. */
    private int fold(int state) {
        if (foldedByState[state] < 0) {
            Set<Step> steps = new LinkedHashSet<>();
            for (Arc arc : automaton.arcs(state)) {
                steps.add(new Step(arc.word(), fold(arc.target())));
            }
            foldedByState[state] = state == Automaton.FINAL ? newEnd() : foldedState(steps);
        }
        return foldedByState[state];
    }

    private int newEnd() {
        folded.add(Set.of());
        end = folded.size() - 1;
        return end;
    }

    private int foldedState(Set<Step> steps) {
        if (steps.size() == 1 && steps.iterator().next().word() == null) {
            return steps.iterator().next().target();
        }
        return foldedBySteps.computeIfAbsent(steps, s -> {
            folded.add(s);
            return folded.size() - 1;
        });
    }

    private int state(int[] members) {
        Integer known = built.get(IntBuffer.wrap(members));
        if (known != null) {
            return known;
        }
        SortedMap<String, Set<Integer>> next = new TreeMap<>();
        for (int member : members) {
            for (Step step : folded.get(member)) {
                if (step.word() != null) {
                    next.computeIfAbsent(step.word(), w -> new HashSet<>()).add(step.target());
                }
            }
        }
        SortedMap<String, Integer> arcs = new TreeMap<>();
        next.forEach((word, targets) -> arcs.put(word, state(closure(targets))));
        boolean accepting = IntStream.of(members).anyMatch(member -> member == end);
        int index = intern(new State(accepting, arcs));
        built.put(IntBuffer.wrap(members), index);
        return index;
    }

    private int intern(State state) {
        return unique.computeIfAbsent(state, s -> {
            states.add(s);
            return states.size() - 1;
        });
    }

    /** Every folded state reached without a word; those with no word of their own are left out, but for the end. */
    private int[] closure(Collection<Integer> members) {
        Set<Integer> closed = new HashSet<>(members);
        Deque<Integer> open = new ArrayDeque<>(members);
        Set<Integer> kept = new HashSet<>();
        while (!open.isEmpty()) {
            int state = open.pop();
            if (state == end) {
                kept.add(state);
            }
            for (Step step : folded.get(state)) {
                if (step.word() != null) {
                    kept.add(state);
                } else if (closed.add(step.target())) {
                    open.push(step.target());
                }
            }
        }
        return kept.stream().mapToInt(Integer::intValue).sorted().toArray();
    }
}
