package org.arcsay.model;

import java.time.Duration;

/**
 * Where an entry came from.
 *
 * @param words exactly what was heard, or typed by the reviewer
 * @param source by voice or by hand
 * @param confidence lowest word confidence, 0 to 1; 1 for typed entries
 * @param start from the beginning of the visit's audio; zero for typed entries
 * @param end from the beginning of the visit's audio; zero for typed entries
 * @param versions the grammar, model and rules that were in force
 */
public record Heard(String words, Source source, double confidence, Duration start, Duration end, Versions versions) {
    public enum Source {
        VOICE,
        TYPED
    }

    public static Heard typed(String words, Versions versions) {
        return new Heard(words, Source.TYPED, 1, Duration.ZERO, Duration.ZERO, versions);
    }

    public static Heard spoken(Utterance utterance, Versions versions) {
        return new Heard(
                utterance.text(), Source.VOICE, utterance.confidence(), utterance.start(), utterance.end(), versions);
    }
}
