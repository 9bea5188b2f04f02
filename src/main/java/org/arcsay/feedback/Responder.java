package org.arcsay.feedback;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.arcsay.model.Entry;
import org.arcsay.model.Finding;
import org.arcsay.model.Placement;
import org.arcsay.model.Slot;
import org.arcsay.model.Utterance;
import org.arcsay.session.Context;
import org.arcsay.session.ContextDoubt;
import org.arcsay.session.Outcome;
import org.arcsay.session.Question;

/**
 * Used by the thread that recognises. Puts outcomes into tones and words.
 *
 * <p>It never says the same complaint twice in a row: a first refusal is a tone, a second one says what happened, a third one
 * says once that nothing is saved, and then talk that is not for us meets silence until something is understood again. A long
 * stretch of talk has the same effect at once.
 */
public final class Responder {
    private static final int PATIENCE = 3;
    private static final int TALK_WORDS = 14;
    private static final int SLOTS_NAMED = 3;

    private final FeedbackLevel level;
    private Answer last = Answer.silent();
    private Optional<Slot> before = Optional.empty();
    private Optional<Question> open = Optional.empty();
    private int refusals;

    public Responder(FeedbackLevel level) {
        this.level = level;
    }

    /**
     * What to sound.
     *
     * @param question what the session waits for after this outcome
     */
    public Answer answer(Utterance heard, Outcome outcome, Optional<Question> question) {
        if (outcome instanceof Outcome.Ignored) {
            return Answer.silent();
        }
        Optional<Question> asked = open;
        open = question;
        if (outcome instanceof Outcome.Refused refused) {
            return refused(heard, refused, asked);
        }
        refusals = 0;
        if (!(outcome instanceof Outcome.SayAgain)) {
            last = understood(outcome);
        }
        return last;
    }

    /** What to sound when the user spoke over an answer and could not be heard: that, and the answer again. */
    public Answer lost() {
        if (quiet()) {
            return Answer.silent();
        }
        refusals++;
        return Answer.of(Earcon.REFUSED, Sentence.of("not understood").then(last.sentence()));
    }

    /** Whether refusals are met with silence for now. */
    public boolean quiet() {
        return refusals >= PATIENCE;
    }

    private Answer understood(Outcome outcome) {
        if (outcome instanceof Outcome.Saved saved) {
            return Answer.of(Earcon.SAVED, readings(saved.entries()));
        }
        if (outcome instanceof Outcome.Corrected corrected) {
            return Answer.of(Earcon.SAVED, Sentence.of("corrected").then(readings(List.of(corrected.now()))));
        }
        if (outcome instanceof Outcome.Kept kept) {
            return Answer.of(Earcon.SAVED, readings(List.of(kept.entry())));
        }
        if (outcome instanceof Outcome.Remarked remarked) {
            return Answer.of(Earcon.SAVED, new Sentence(List.of(SpokenReadback.remark(remarked.remark()))));
        }
        if (outcome instanceof Outcome.Asked asked) {
            if (asked.stored().stream().anyMatch(ContextDoubt::isOn)) {
                before = Optional.empty();
            }
            return Answer.of(Earcon.DOUBTFUL, readings(asked.stored()).then(question(asked.question())));
        }
        return outcome instanceof Outcome.Undone undone ? Answer.of(Earcon.UNDONE, undone(undone)) : state(outcome);
    }

    private Answer state(Outcome outcome) {
        if (outcome instanceof Outcome.ContextSet set) {
            return Answer.of(Earcon.LISTENING, context(set.context()));
        }
        if (outcome instanceof Outcome.ReadBack readBack) {
            return readBack.entries().isEmpty()
                    ? Answer.words(Sentence.of("no reading yet"))
                    : Answer.words(readings(readBack.entries()));
        }
        if (outcome instanceof Outcome.Missing missing) {
            return Answer.words(missing(missing.slots()));
        }
        if (outcome instanceof Outcome.Next next) {
            return Answer.words(next(next.slot()));
        }
        if (outcome instanceof Outcome.Position position) {
            Sentence here = context(new Context(position.side(), position.mode()));
            Sentence latest =
                    position.last().map(entry -> readings(List.of(entry))).orElse(Sentence.nothing());
            return Answer.words(here.then(latest).then(next(position.next())));
        }
        if (outcome instanceof Outcome.Paused) {
            return Answer.of(Earcon.PAUSED, Sentence.of("paused"));
        }
        return outcome instanceof Outcome.Ended
                ? Answer.of(Earcon.PAUSED, Sentence.of("session ended"))
                : Answer.of(Earcon.LISTENING, Sentence.of("listening"));
    }

    private Sentence readings(List<Entry> entries) {
        Sentence all = Sentence.nothing();
        for (Entry entry : entries) {
            all = all.then(SpokenReadback.of(entry.reading(), entry.remarks(), level, before));
            before = Optional.of(entry.reading().slot());
        }
        return all;
    }

    private Sentence undone(Outcome.Undone undone) {
        Sentence taken = Sentence.of("removed").then(readings(undone.entries()));
        return undone.restored().isEmpty()
                ? taken
                : taken.then(Sentence.of("back to")).then(readings(undone.restored()));
    }

    private static Sentence question(Question question) {
        if (question instanceof Question.IsItRight right) {
            return doubt(right.finding());
        }
        if (question instanceof Question.Again) {
            return Sentence.of("already measured", "second trial").then(either("or", "correct that"));
        }
        if (question instanceof Question.WhichHand) {
            return Sentence.of("which hand");
        }
        if (question instanceof Question.WhichKind) {
            return Sentence.of("hyperextension").then(either("or", "deficit"));
        }
        if (question instanceof Question.WhichValue value) {
            return new Sentence(List.of(SpokenReadback.measure(value.measure()), List.of("which value")));
        }
        return Sentence.of("which value");
    }

    /** Offers the value that would fit better, if there is one, and never applies it. */
    private static Sentence doubt(Finding finding) {
        return finding.alternative()
                .map(other ->
                        Sentence.of("or").then(SpokenReadback.value(other)).then(Sentence.of("please confirm")))
                .orElseGet(() -> doubtOf(finding.rule()));
    }

    private static Sentence doubtOf(String rule) {
        if (rule.equals(Question.HEARING) || rule.equals(Question.CONTEXT)) {
            return Sentence.of("please confirm");
        }
        return rule.startsWith("protocol.")
                ? Sentence.of("protocol", "yes or no")
                : Sentence.of("unusual value", "yes or no");
    }

    private static Sentence either(String... words) {
        return new Sentence(List.of(List.of(words)));
    }

    private static Sentence context(Context context) {
        Sentence hand =
                context.side().map(named -> Sentence.of(named.word() + " hand")).orElse(Sentence.nothing());
        Sentence moved = hand.then(Sentence.of(context.mode().word()));
        return context.placement() == Placement.UNSTATED
                ? moved
                : moved.then(Sentence.of(context.placement().word()));
    }

    private static Sentence missing(List<Slot> slots) {
        if (slots.isEmpty()) {
            return Sentence.of("nothing missing");
        }
        List<List<String>> phrases = new ArrayList<>(List.of(List.of("still missing")));
        slots.stream().limit(SLOTS_NAMED).forEach(slot -> phrases.add(SpokenReadback.measure(slot.measure())));
        if (slots.size() > SLOTS_NAMED) {
            phrases.add(List.of("and more"));
        }
        return new Sentence(phrases);
    }

    private static Sentence next(Optional<Slot> slot) {
        return slot.map(named -> new Sentence(List.of(List.of("next"), SpokenReadback.measure(named.measure()))))
                .orElse(Sentence.of("series complete"));
    }

    private Answer refused(Utterance heard, Outcome.Refused refused, Optional<Question> asked) {
        boolean wasQuiet = quiet();
        refusals = heard.words().size() >= TALK_WORDS ? Math.max(PATIENCE, refusals + 1) : refusals + 1;
        return switch (refused.why()) {
            case NOT_STORED -> Answer.of(Earcon.REFUSED, Sentence.of("could not be stored", "look at the screen"));
            case IMPOSSIBLE -> Answer.of(Earcon.REFUSED, Sentence.of("not possible"));
            case CONTRADICTORY -> Answer.of(Earcon.REFUSED, Sentence.of("not possible", "look at the screen"));
            case NOTHING_TO_CHANGE -> Answer.of(Earcon.REFUSED, Sentence.of("no reading yet"));
            case NOTHING_EXPECTED -> Answer.of(Earcon.REFUSED, Sentence.of("series complete"));
            case NO_QUESTION, NO_JOINT, NOT_UNDERSTOOD ->
                asked.isPresent() ? failedAnswer(asked.get()) : notForUs(refused.why(), wasQuiet);
        };
    }

    private Answer failedAnswer(Question asked) {
        if (open.isEmpty()) {
            refusals = 0;
            return Answer.of(Earcon.PAUSED, Sentence.of("marked for review"));
        }
        return refusals == 1 ? Answer.of(Earcon.REFUSED, question(asked)) : Answer.of(Earcon.REFUSED);
    }

    private Answer notForUs(Outcome.Why why, boolean wasQuiet) {
        if (wasQuiet) {
            return Answer.silent();
        }
        if (quiet()) {
            return Answer.of(Earcon.PAUSED, Sentence.of("nothing saved", "ready when you are"));
        }
        if (refusals == 1 && why != Outcome.Why.NO_JOINT) {
            return Answer.of(Earcon.REFUSED);
        }
        return Answer.of(Earcon.REFUSED, Sentence.of(why == Outcome.Why.NO_JOINT ? "which joint" : "not understood"));
    }
}
