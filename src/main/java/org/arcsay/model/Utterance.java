package org.arcsay.model;

import java.time.Duration;
import java.util.List;
import java.util.stream.Collectors;

/**
 * What the recogniser heard between two silences.
 *
 * @param words at least one word, in order of time: the likeliest
 * @param rivals other words that the same sound could have been, likeliest first
 * @param signalToNoise by how many decibels the speech was above the sound around it; infinite where that is not known
 */
public record Utterance(List<Word> words, List<Rival> rivals, double signalToNoise) {
    /** Ghost words in near silence had 0.06 to 0.23; the least sure word of a whole visit had 0.89. */
    private static final double BREATH_PROBABILITY = 0.3;

    public Utterance {
        words = List.copyOf(words);
        rivals = List.copyOf(rivals);
        if (words.isEmpty()) {
            throw new IllegalArgumentException("an utterance has at least one word");
        }
    }

    public Utterance(List<Word> words, List<Rival> rivals) {
        this(words, rivals, Double.POSITIVE_INFINITY);
    }

    public Utterance(List<Word> words) {
        this(words, List.of());
    }

    /** The same words, spoken so many decibels above the sound around them. */
    public Utterance above(double decibels) {
        return new Utterance(words, rivals, decibels);
    }

    /**
     * Other words for the same sound.
     *
     * @param text words separated by spaces; empty for no words at all
     * @param probability 0 to 1, as the recogniser's model sees it; the words heard and all rivals together have 1
     */
    public record Rival(String text, double probability) {}

    /**
     * Whether this is one word alone that the recogniser hardly believes in: noise at the edge of silence, unless it is the rest
     * of a sentence.
     */
    public boolean isBreath() {
        return words.size() == 1 && probability() < BREATH_PROBABILITY;
    }

    /** How likely the words are beside their rivals, 0 to 1, as the recogniser's model sees it. */
    public double probability() {
        return Math.max(0, 1 - rivals.stream().mapToDouble(Rival::probability).sum());
    }

    /** Words that were typed: at no time, and certain. */
    public static Utterance typed(List<String> words) {
        return new Utterance(words.stream()
                .map(word -> new Word(word, Duration.ZERO, Duration.ZERO, 1))
                .toList());
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
