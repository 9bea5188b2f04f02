package org.arcsay.session;

import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/** Where the talk stands beside what is stored: only the thread that owns the session may use it. */
final class Talk {
    Context context;

    @Nullable
    Question question;

    int failedAnswers;

    /** Whether what was said last came to nothing, so that a bare correction would change a reading not meant. */
    boolean cameToNothing;

    /** The entries of the last utterance that gave some. */
    List<Integer> lastGroup = List.of();

    Talk(Context context) {
        this.context = context;
    }

    Talk copy() {
        Talk copy = new Talk(context);
        copy.set(this);
        return copy;
    }

    void set(Talk other) {
        context = other.context;
        question = other.question;
        failedAnswers = other.failedAnswers;
        cameToNothing = other.cameToNothing;
        lastGroup = other.lastGroup;
    }

    Optional<Question> question() {
        return Optional.ofNullable(question);
    }
}
