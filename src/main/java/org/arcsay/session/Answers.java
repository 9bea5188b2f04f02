package org.arcsay.session;

import java.util.List;
import java.util.Optional;
import org.arcsay.model.Entry;
import org.arcsay.model.Heard;
import org.arcsay.model.Reading;
import org.arcsay.model.Site;
import org.arcsay.model.Value;
import org.arcsay.parser.Command;
import org.arcsay.parser.Command.Dictated;
import org.arcsay.parser.SpokenKind;
import org.arcsay.parser.SpokenReading;
import org.arcsay.parser.Who;
import org.arcsay.session.Outcome.Why;

/** Asks what a reading lacks, and deals with the answers: only the thread that owns the session may use it. */
final class Answers {
    private static final int MAX_FAILED_ANSWERS = 3;

    private final Recorder recorder;
    private final Resolver resolver;
    private final Entries entries;
    private final Talk talk;

    Answers(Recorder recorder, Resolver resolver, Entries entries, Talk talk) {
        this.recorder = recorder;
        this.resolver = resolver;
        this.entries = entries;
        this.talk = talk;
    }

    Outcome dictated(Dictated said, Heard heard) throws JournalException {
        if (Entries.saysLagPassively(said)) {
            return new Outcome.Refused(
                    Why.CONTRADICTORY, "A lag is what is lacking on active motion. Say deficit for passive motion.");
        }
        if (said.correction()) {
            return entries.correctLast(said, heard);
        }
        Optional<Outcome> answer = answerWithReading(said, heard);
        if (answer.isPresent()) {
            return answer.get();
        }
        talk.question = null;
        Context here = talk.context().with(said.who());
        if (here.side().isEmpty()) {
            return entries.ask(new Question.WhichHand(said, heard), List.of());
        }
        if (!entries.allResolved(said)) {
            return entries.ask(new Question.WhichKind(said, heard), List.of());
        }
        talk.name(said.who());
        return entries.take(said, heard);
    }

    /** The hand that was asked for; empty where none was. */
    Optional<Outcome> handNamed(Who who) throws JournalException {
        if (!(talk.question instanceof Question.WhichHand asked) || who.side().isEmpty()) {
            return Optional.empty();
        }
        talk.question = null;
        Who said = asked.pending().who();
        Who whole =
                new Who(who.side(), who.mode().or(said::mode), who.placement().or(said::placement));
        return Optional.of(dictated(new Dictated(whole, asked.pending().readings(), false), asked.heard()));
    }

    Outcome named(Command.Named named) {
        return entries.ask(
                new Question.WhichValue(named.who(), named.measure(), named.kind(), named.motionImplied()), List.of());
    }

    Outcome number(Command.Number said, Heard heard) throws JournalException {
        if (said.correction()) {
            return entries.correctLastValue(said, heard);
        }
        if (talk.question instanceof Question.WhichValue asked) {
            return dictated(completed(asked, said), heard);
        }
        if (talk.question instanceof Question.WhichNumber asked) {
            return entries.replaceValue(asked.entry(), said, heard);
        }
        if (talk.question instanceof Question.IsItRight asked) {
            return entries.replaceValue(asked.entry(), said, heard);
        }
        if (talk.question != null) {
            return failedAnswer();
        }
        return noJoint(said.number().toPlainString());
    }

    private static Outcome noJoint(String number) {
        return new Outcome.Refused(
                Why.NO_JOINT, "I heard " + number + " without a joint. Say the joint and the motion with it.");
    }

    private static Dictated completed(Question.WhichValue asked, Command.Number said) {
        SpokenReading reading = new SpokenReading(
                asked.measure(), SpokenValues.of(asked.measure(), asked.kind(), said), asked.motionImplied());
        return new Dictated(asked.who(), List.of(reading), false);
    }

    Outcome arc(Command.Arc arc, Heard heard) throws JournalException {
        if (talk.question instanceof Question.WhichValue asked && !arc.correction()) {
            return dictated(
                    new Dictated(asked.who(), SpokenReading.arc(asked.measure().site(), arc.from(), arc.to()), false),
                    heard);
        }
        if (arc.correction() && talk.lastGroup.size() == 2) {
            Site site =
                    recorder.entry(talk.lastGroup.get(0)).reading().measure().site();
            return entries.correctLast(
                    new Dictated(Who.UNSAID, SpokenReading.arc(site, arc.from(), arc.to()), true), heard);
        }
        return noJoint(arc.from().toPlainString() + " to " + arc.to().toPlainString());
    }

    private Optional<Outcome> answerWithReading(Dictated said, Heard heard) throws JournalException {
        if (!(talk.question instanceof Question.IsItRight asked)
                || said.readings().size() != 1) {
            return Optional.empty();
        }
        SpokenReading spoken = said.readings().get(0);
        Optional<Value> value = resolver.value(spoken, recorder.visit());
        Context here = talk.context().with(said.who());
        if (value.isEmpty() || here.side().isEmpty()) {
            return Optional.empty();
        }
        Entry entry = recorder.entry(asked.entry());
        Reading doubted = entry.reading();
        Reading again = Entries.reading(here, spoken, value.get());
        if (!again.slot().equals(doubted.slot())) {
            return Optional.empty();
        }
        talk.name(said.who());
        if (ContextDoubt.isOn(entry) && talk.otherContext().isPresent()) {
            return Optional.of(failedAnswer());
        }
        return Optional.of(
                again.equals(doubted) ? yes() : entries.replace(asked.entry(), again, heard, "said again in answer"));
    }

    /** A question about a reading is left for the review where another hand or mode is named: what follows is no answer to it. */
    void leaveBefore(Who who) {
        if (isElsewhere(who) && talk.question().filter(Question::isAboutEntry).isPresent()) {
            talk.question = null;
        }
    }

    /**
     * A reading that waits for its direction belongs to the hand and mode in which it was said: that is asked again before another
     * one is taken, which counts as unclear until it is said again.
     */
    Optional<Outcome> owedBefore(Who who) {
        if (!(talk.question instanceof Question.WhichKind) || !isElsewhere(who)) {
            return Optional.empty();
        }
        talk.nameUnclearly(who);
        return Optional.of(failedAnswer());
    }

    private boolean isElsewhere(Who who) {
        Context here = talk.context();
        Context other = here.with(who);
        return !other.side().equals(here.side()) || other.mode() != here.mode();
    }

    Outcome yes() throws JournalException {
        if (talk.question instanceof Question.IsItRight asked) {
            talk.question = null;
            Entry kept = recorder.release(asked.entry(), "affirmed by voice");
            if (ContextDoubt.isOn(kept)) {
                talk.settle();
            }
            return new Outcome.Kept(kept);
        }
        return talk.question == null ? noQuestion() : failedAnswer();
    }

    Outcome no(Command.No no, Heard heard) throws JournalException {
        if (talk.question == null) {
            return noQuestion();
        }
        if (talk.question instanceof Question.IsItRight asked) {
            return no.instead().isPresent()
                    ? entries.replaceValue(asked.entry(), no.instead().get(), heard)
                    : takeBack(asked.entry());
        }
        if (talk.question instanceof Question.Again asked) {
            return takeBack(asked.entry());
        }
        talk.question = null;
        return new Outcome.Listening();
    }

    private Outcome takeBack(int entry) throws JournalException {
        talk.question = null;
        return new Outcome.Undone(List.of(recorder.reject(entry, "answered no by voice")), List.of());
    }

    Outcome kindNamed(SpokenKind kind) throws JournalException {
        if (talk.question instanceof Question.WhichKind asked) {
            talk.question = null;
            List<SpokenReading> clear = asked.pending().readings().stream()
                    .map(reading -> SpokenValues.withKind(reading, kind))
                    .toList();
            return dictated(
                    new Dictated(asked.pending().who(), clear, asked.pending().correction()), asked.heard());
        }
        return talk.question == null ? noQuestion() : failedAnswer();
    }

    Outcome secondTrial() throws JournalException {
        if (talk.question instanceof Question.Again asked) {
            talk.question = null;
            return new Outcome.Kept(recorder.release(asked.entry(), "second trial"));
        }
        return talk.question == null ? noQuestion() : failedAnswer();
    }

    Outcome replaceEarlier() throws JournalException {
        if (talk.question instanceof Question.Again asked) {
            talk.question = null;
            Entry before = recorder.reject(asked.earlier(), "replaced by entry " + asked.entry());
            return new Outcome.Corrected(before, recorder.release(asked.entry(), "replaces entry " + asked.earlier()));
        }
        return talk.question == null ? noQuestion() : failedAnswer();
    }

    private static Outcome noQuestion() {
        return new Outcome.Refused(Why.NO_QUESTION, "Nothing was asked.");
    }

    /** After three answers that do not fit, the question is dropped; what is stored stays flagged for the review. */
    Outcome failedAnswer() {
        talk.failedAnswers++;
        Question asked = talk.question;
        if (talk.failedAnswers >= MAX_FAILED_ANSWERS || asked == null) {
            talk.question = null;
            return new Outcome.Refused(Why.NOT_UNDERSTOOD, "Left for the review.");
        }
        return new Outcome.Refused(Why.NOT_UNDERSTOOD, asked.sentence());
    }

    Outcome rejected(Command.Rejected rejected) {
        return talk.question == null ? new Outcome.Refused(Why.NOT_UNDERSTOOD, rejected.detail()) : failedAnswer();
    }
}
