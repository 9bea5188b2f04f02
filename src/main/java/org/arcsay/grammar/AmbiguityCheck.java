package org.arcsay.grammar;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.arcsay.grammar.Automaton.Arc;
import org.jspecify.annotations.Nullable;

/**
 * Decides for the whole language whether any sentence has two meanings, by walking two readers of the grammar through the
 * same words side by side and keeping what one of them has said in tags and the other has not yet.
 *
 * <p>Used by one thread for one check.
 */
final class AmbiguityCheck {
    private final Automaton automaton;
    private final Map<Pair, @Nullable Step> seen = new HashMap<>();
    private final Deque<Pair> open = new ArrayDeque<>();

    /** Two states after the same words; {@code lead} is what the first has said beyond the second. */
    private record Pair(int first, int second, List<Tag> lead, boolean firstLeads, boolean broken) {}

    private record Step(Pair from, @Nullable String word) {}

    AmbiguityCheck(Automaton automaton) {
        this.automaton = automaton;
    }

    List<String> find(int limit) {
        List<String> found = new ArrayList<>();
        visit(new Pair(Automaton.START, Automaton.START, List.of(), true, false), null);
        while (!open.isEmpty() && found.size() < limit) {
            Pair pair = open.pop();
            boolean ends = pair.first() == Automaton.FINAL && pair.second() == Automaton.FINAL;
            if (ends && (pair.broken() || !pair.lead().isEmpty())) {
                found.add(sentence(pair));
            }
            expand(pair);
        }
        return found.stream().distinct().toList();
    }

    private void expand(Pair pair) {
        for (Arc arc : automaton.arcs(pair.first())) {
            if (arc.word() == null) {
                visit(say(pair, true, arc), new Step(pair, null));
            }
        }
        for (Arc arc : automaton.arcs(pair.second())) {
            if (arc.word() == null) {
                visit(say(pair, false, arc), new Step(pair, null));
            }
        }
        for (Arc one : automaton.arcs(pair.first())) {
            for (Arc two : automaton.arcs(pair.second())) {
                if (one.word() != null && one.word().equals(two.word())) {
                    visit(
                            new Pair(one.target(), two.target(), pair.lead(), pair.firstLeads(), pair.broken()),
                            new Step(pair, one.word()));
                }
            }
        }
    }

    private Pair say(Pair pair, boolean first, Arc arc) {
        int one = first ? arc.target() : pair.first();
        int two = first ? pair.second() : arc.target();
        if (arc.tag() == null || pair.broken()) {
            return new Pair(one, two, pair.lead(), pair.firstLeads(), pair.broken());
        }
        if (pair.lead().isEmpty() || pair.firstLeads() == first) {
            List<Tag> longer = new ArrayList<>(pair.lead());
            longer.add(arc.tag());
            return new Pair(one, two, List.copyOf(longer), first, false);
        }
        if (!pair.lead().get(0).equals(arc.tag())) {
            return new Pair(one, two, List.of(), true, true);
        }
        List<Tag> rest = List.copyOf(pair.lead().subList(1, pair.lead().size()));
        return new Pair(one, two, rest, rest.isEmpty() || pair.firstLeads(), false);
    }

    private void visit(Pair pair, @Nullable Step step) {
        if (!seen.containsKey(pair)) {
            seen.put(pair, step);
            open.push(pair);
        }
    }

    private String sentence(Pair end) {
        Deque<String> words = new ArrayDeque<>();
        Step step = seen.get(end);
        while (step != null) {
            if (step.word() != null) {
                words.push(step.word());
            }
            step = seen.get(step.from());
        }
        return String.join(" ", words);
    }
}
