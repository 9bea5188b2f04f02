package org.arcsay.session;

import java.util.List;
import java.util.Optional;
import org.arcsay.parser.Who;
import org.jspecify.annotations.Nullable;

/** Where the talk stands beside what is stored: only the thread that owns the session may use it. */
final class Talk {
    private Context context;

    /** Hand, mode and placement if words about them that were not clear enough to act on meant what they seemed to. */
    private Context perhaps;

    @Nullable
    Question question;

    int failedAnswers;

    /** Whether what was said last came to nothing, so that a bare correction would change a reading not meant. */
    boolean cameToNothing;

    /** The entries of the last utterance that gave some. */
    List<Integer> lastGroup = List.of();

    Talk(Context context) {
        this.context = context;
        this.perhaps = context;
    }

    Context context() {
        return context;
    }

    /** Hand, mode or placement were named clearly; what was not named stays, and stays as unclear as it was. */
    void name(Who who) {
        context = context.with(who);
        perhaps = perhaps.with(who);
    }

    /** The hand, mode and placement that hold are beyond doubt. */
    void settle() {
        perhaps = context;
    }

    /** To hand and mode of an earlier reading; what was unclear stays unclear. */
    void goBackTo(Context earlier) {
        perhaps = otherContext().orElse(earlier);
        context = earlier;
    }

    /** Hand, mode or placement were named, but not clearly enough to act on. */
    void nameUnclearly(Who who) {
        perhaps = perhaps.with(who);
    }

    /** What hand, mode and placement may have been meant instead of those that hold. */
    Optional<Context> otherContext() {
        return Optional.of(perhaps).filter(other -> !other.equals(context));
    }

    Talk copy() {
        Talk copy = new Talk(context);
        copy.set(this);
        return copy;
    }

    void set(Talk other) {
        context = other.context;
        perhaps = other.perhaps;
        question = other.question;
        failedAnswers = other.failedAnswers;
        cameToNothing = other.cameToNothing;
        lastGroup = other.lastGroup;
    }

    Optional<Question> question() {
        return Optional.ofNullable(question);
    }
}
