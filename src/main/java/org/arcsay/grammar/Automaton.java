package org.arcsay.grammar;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import org.arcsay.grammar.Expansion.Choice;
import org.arcsay.grammar.Expansion.Meaning;
import org.arcsay.grammar.Expansion.Reference;
import org.arcsay.grammar.Expansion.Sequence;
import org.arcsay.grammar.Expansion.Token;
import org.jspecify.annotations.Nullable;

/** The grammar unrolled into a graph of words and tags: one path is one sentence with its meaning. */
final class Automaton {
    /**
     * One step.
     *
     * @param word the word that is said, or null
     * @param tag the meaning that is carried, or null
     * @param target the state after the step
     */
    record Arc(@Nullable String word, @Nullable Tag tag, int target) {}

    static final int START = 0;
    static final int FINAL = 1;

    private final Map<String, Expansion> rules;
    private final List<List<Arc>> arcs = new ArrayList<>();

    private Automaton(Map<String, Expansion> rules) {
        this.rules = rules;
        newState();
        newState();
    }

    static Automaton of(JsgfLinker.Rules rules) {
        Automaton automaton = new Automaton(rules.rules());
        automaton.add(new Reference(rules.root()), START, FINAL);
        return automaton;
    }

    List<Arc> arcs(int state) {
        return arcs.get(state);
    }

    int size() {
        return arcs.size();
    }

    private int newState() {
        arcs.add(new ArrayList<>());
        return arcs.size() - 1;
    }

    private void arc(int from, @Nullable String word, @Nullable Tag tag, int to) {
        arcs.get(from).add(new Arc(word, tag, to));
    }

    private void add(Expansion expansion, int from, int to) {
        if (expansion instanceof Token token) {
            arc(from, token.word(), null, to);
        } else if (expansion instanceof Meaning meaning) {
            arc(from, null, meaning.tag(), to);
        } else if (expansion instanceof Reference reference) {
            addReference(reference.rule(), from, to);
        } else if (expansion instanceof Choice choice) {
            choice.options().forEach(option -> add(option, from, to));
        } else {
            addSequence(((Sequence) expansion).parts(), from, to);
        }
    }

    private void addReference(String rule, int from, int to) {
        Integer highest = SpokenNumbers.RULES.get(rule);
        if (highest == null) {
            add(Objects.requireNonNull(rules.get(rule), rule), from, to);
        } else {
            addNumbers(highest, from, to);
        }
    }

    private void addSequence(List<Expansion> parts, int from, int to) {
        int state = from;
        for (int i = 0; i < parts.size(); i++) {
            int next = i == parts.size() - 1 ? to : newState();
            add(parts.get(i), state, next);
            state = next;
        }
        if (parts.isEmpty()) {
            arc(from, null, null, to);
        }
    }

    private void addNumbers(int highest, int from, int to) {
        int whole = newState();
        Map<List<String>, Integer> prefixes = new HashMap<>();
        prefixes.put(List.of(), from);
        for (int number = 0; number <= highest; number++) {
            for (List<String> form : SpokenNumbers.whole(number)) {
                arc(prefixState(form, prefixes), null, new Tag("number", String.valueOf(number)), whole);
            }
        }
        arc(whole, null, null, to);
        if (highest == SpokenNumbers.HIGHEST) {
            addTenths(from, whole, to);
        }
    }

    private int prefixState(List<String> form, Map<List<String>, Integer> prefixes) {
        Integer known = prefixes.get(form);
        if (known != null) {
            return known;
        }
        int before = prefixState(form.subList(0, form.size() - 1), prefixes);
        int state = newState();
        arc(before, form.get(form.size() - 1), null, state);
        prefixes.put(form, state);
        return state;
    }

    private void addTenths(int from, int whole, int to) {
        int point = newState();
        arc(whole, "point", null, point);
        int leadingPoint = newState();
        arc(from, "point", null, leadingPoint);
        arc(leadingPoint, null, new Tag("number", "0"), point);
        for (int digit = 0; digit <= 9; digit++) {
            int said = newState();
            arc(point, SpokenNumbers.digit(digit), null, said);
            arc(said, null, new Tag("tenths", String.valueOf(digit)), to);
        }
    }
}
