package org.arcsay.feedback;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Collectors;

/**
 * Something to be said, as clips of the word list: a comma between phrases, no pause within one.
 *
 * @param phrases phrases of clip words, such as [[i p, flexion], [seven, five]]; none of them is empty
 */
public record Sentence(List<List<String>> phrases) {
    private static final Sentence NOTHING = new Sentence(List.of());

    public Sentence {
        phrases = phrases.stream()
                .filter(phrase -> !phrase.isEmpty())
                .map(List::copyOf)
                .toList();
    }

    public static Sentence nothing() {
        return NOTHING;
    }

    /** A sentence of one clip a phrase. */
    public static Sentence of(String... clips) {
        return new Sentence(Arrays.stream(clips).map(List::of).toList());
    }

    public Sentence then(Sentence more) {
        List<List<String>> all = new ArrayList<>(phrases);
        all.addAll(more.phrases);
        return new Sentence(all);
    }

    public boolean isEmpty() {
        return phrases.isEmpty();
    }

    /** The sentence as text, such as "i p flexion, seven five". */
    public String text() {
        return phrases.stream().map(phrase -> String.join(" ", phrase)).collect(Collectors.joining(", "));
    }
}
