package org.arcsay.report.content;

import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import org.arcsay.model.Side;

/**
 * Facts of one kind beyond the table of the series.
 *
 * @param title what they are about
 * @param briefTitle the same above the brief sentences
 * @param facts one sentence each, right hand first
 */
public record Section(String title, String briefTitle, List<Fact> facts) {
    /** Title of what the treatment protocol says. */
    public static final String PROTOCOL = "Treatment protocol";

    static final String SERIES = "Series";
    static final String OPPOSITION = "Opposition";

    /** Titles of what a page says in any case; the rest can be read off its table and its drawings. */
    public static final Set<String> ESSENTIAL = Set.of(PROTOCOL, SERIES, OPPOSITION);

    /** Title of what the other hand had when it was last measured, where that was at another visit. */
    static final String OTHER_HAND = "Beside the other hand at an earlier visit";

    /** Title of what goes beyond the last visit. */
    static final String LONGER = "Since the first visit, and beside the best so far";

    public Section {
        facts = List.copyOf(facts);
    }

    Section(String title, List<Fact> facts) {
        this(title, title, facts);
    }

    /**
     * One sentence.
     *
     * @param side the hand that it is about; empty where it is about the patient
     * @param words without the hand
     * @param brief the same where room is scarce; empty where a page with table and drawings shows it already
     */
    public record Fact(Optional<Side> side, String words, String brief) {
        /** With the hand. */
        public String sentence() {
            return side.map(hand -> hand.word() + " ").orElse("") + words;
        }
    }

    /** The sentences for a page about one hand, without the hand. */
    public List<String> about(Side side) {
        return of(side).map(Fact::words).toList();
    }

    /** As {@link #about}, where room is scarce. */
    public List<String> briefly(Side side) {
        return of(side).map(Fact::brief).filter(brief -> !brief.isEmpty()).toList();
    }

    private Stream<Fact> of(Side side) {
        return facts.stream()
                .filter(fact -> fact.side().isEmpty() || fact.side().get() == side);
    }
}
