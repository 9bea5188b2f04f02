package org.arcsay.model;

import java.time.Duration;
import java.util.List;
import java.util.stream.Collectors;

/**
 * What the recogniser heard between two silences.
 *
 * @param words at least one word, in order of time
 */
public record Utterance(List<Word> words) {
    public Utterance {
        words = List.copyOf(words);
        if (words.isEmpty()) {
            throw new IllegalArgumentException("an utterance has at least one word");
        }
    }

    public String text() {
        return words.stream().map(Word::text).collect(Collectors.joining(" "));
    }

    public Duration start() {
        return words.get(0).start();
    }

    public Duration end() {
        return words.get(words.size() - 1).end();
    }

    /** The lowest confidence of its words. */
    public double confidence() {
        return words.stream().mapToDouble(Word::confidence).min().orElse(0);
    }

}
