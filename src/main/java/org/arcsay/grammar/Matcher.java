package org.arcsay.grammar;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import org.arcsay.grammar.Automaton.Arc;

/** Finds every meaning that a sequence of words can have. */
final class Matcher {
    private final Automaton automaton;

    Matcher(Automaton automaton) {
        this.automaton = automaton;
    }

    /** The tags of each path that says exactly these words; empty when no sentence does. */
    Set<List<Tag>> match(List<String> words) {
        Set<List<Tag>> meanings = new LinkedHashSet<>();
        walk(Automaton.START, words, 0, new ArrayList<>(), meanings);
        return meanings;
    }

    /** Whether some sentence begins with these words. */
    boolean isBeginning(List<String> words) {
        return reaches(Automaton.START, words, 0);
    }

    private boolean reaches(int state, List<String> words, int position) {
        if (position == words.size()) {
            return true;
        }
        for (Arc arc : automaton.arcs(state)) {
            boolean silent = arc.word() == null;
            if ((silent || words.get(position).equals(arc.word()))
                    && reaches(arc.target(), words, silent ? position : position + 1)) {
                return true;
            }
        }
        return false;
    }

    private void walk(int state, List<String> words, int position, List<Tag> tags, Set<List<Tag>> meanings) {
        if (state == Automaton.FINAL && position == words.size()) {
            meanings.add(List.copyOf(tags));
        }
        for (Arc arc : automaton.arcs(state)) {
            if (arc.word() == null) {
                follow(arc, words, position, tags, meanings);
            } else if (position < words.size() && arc.word().equals(words.get(position))) {
                follow(arc, words, position + 1, tags, meanings);
            }
        }
    }

    private void follow(Arc arc, List<String> words, int position, List<Tag> tags, Set<List<Tag>> meanings) {
        if (arc.tag() != null) {
            tags.add(arc.tag());
        }
        walk(arc.target(), words, position, tags, meanings);
        if (arc.tag() != null) {
            tags.remove(tags.size() - 1);
        }
    }
}
