package org.arcsay.feedback;

import java.util.Optional;

/**
 * What sounds after an utterance or a change of state: a tone, then words.
 *
 * @param earcon the tone, if any
 * @param sentence the words, possibly none
 */
public record Answer(Optional<Earcon> earcon, Sentence sentence) {
    private static final Answer SILENT = new Answer(Optional.empty(), Sentence.nothing());

    public static Answer of(Earcon earcon, Sentence sentence) {
        return new Answer(Optional.of(earcon), sentence);
    }

    public static Answer of(Earcon earcon) {
        return of(earcon, Sentence.nothing());
    }

    public static Answer words(Sentence sentence) {
        return new Answer(Optional.empty(), sentence);
    }

    public static Answer silent() {
        return SILENT;
    }

    public boolean isSilent() {
        return earcon.isEmpty() && sentence.isEmpty();
    }

    /** What of it sounds at a level. */
    public Answer at(FeedbackLevel level) {
        if (!level.sounds()) {
            return SILENT;
        }
        return level.speaks() ? this : new Answer(earcon, Sentence.nothing());
    }
}
