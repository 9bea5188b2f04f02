package org.arcsay.grammar;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.arcsay.grammar.Automaton.Arc;

/**
 * Finds words for a meaning: the first path through the grammar that carries exactly these tags.
 *
 * <p>Used by one thread for one meaning.
 */
final class Speller {
    private record Place(int state, int said) {}

    private final Automaton automaton;
    private final List<Tag> meaning;
    private final Set<Place> deadEnds = new HashSet<>();
    private final List<String> words = new ArrayList<>();

    Speller(Automaton automaton, List<Tag> meaning) {
        this.automaton = automaton;
        this.meaning = meaning;
    }

    Optional<List<String>> spell() {
        return reachesEnd(Automaton.START, 0) ? Optional.of(List.copyOf(words)) : Optional.empty();
    }

    private boolean reachesEnd(int state, int said) {
        if (state == Automaton.FINAL && said == meaning.size()) {
            return true;
        }
        Place place = new Place(state, said);
        if (deadEnds.contains(place)) {
            return false;
        }
        for (Arc arc : automaton.arcs(state)) {
            if (follow(arc, said)) {
                return true;
            }
        }
        deadEnds.add(place);
        return false;
    }

    private boolean follow(Arc arc, int said) {
        if (arc.tag() != null && (said == meaning.size() || !meaning.get(said).equals(arc.tag()))) {
            return false;
        }
        if (arc.word() != null) {
            words.add(arc.word());
        }
        if (reachesEnd(arc.target(), arc.tag() == null ? said : said + 1)) {
            return true;
        }
        if (arc.word() != null) {
            words.remove(words.size() - 1);
        }
        return false;
    }
}
