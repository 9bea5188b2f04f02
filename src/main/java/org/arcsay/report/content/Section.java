package org.arcsay.report.content;

import java.util.List;
import java.util.Optional;
import org.arcsay.model.Side;

/**
 * Facts of one kind beyond the table of the series.
 *
 * @param title what they are about
 * @param facts one sentence each, right hand first
 */
public record Section(String title, List<Fact> facts) {
    /** Title of what the treatment protocol says. */
    public static final String PROTOCOL = "Treatment protocol";

    public Section {
        facts = List.copyOf(facts);
    }

    /**
     * One sentence.
     *
     * @param side the hand that it is about; empty where it is about the patient
     * @param words without the hand
     */
    public record Fact(Optional<Side> side, String words) {
        /** With the hand. */
        public String sentence() {
            return side.map(hand -> hand.word() + " ").orElse("") + words;
        }
    }

    /** The sentences for a page about one hand, without the hand. */
    public List<String> about(Side side) {
        return facts.stream()
                .filter(fact -> fact.side().isEmpty() || fact.side().get() == side)
                .map(Fact::words)
                .toList();
    }
}
