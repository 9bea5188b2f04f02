package org.arcsay.session;

import java.time.Clock;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.BiFunction;
import java.util.stream.Stream;
import org.arcsay.analysis.Completeness;
import org.arcsay.analysis.SeriesPlan;
import org.arcsay.model.ClinicSettings;
import org.arcsay.model.Entry;
import org.arcsay.model.Finding;
import org.arcsay.model.Heard;
import org.arcsay.model.Reading;
import org.arcsay.model.Slot;
import org.arcsay.model.Visit;
import org.arcsay.parser.Command;
import org.arcsay.parser.Command.ControlWord;
import org.arcsay.parser.Command.Dictated;
import org.arcsay.parser.Joining;
import org.arcsay.parser.Understood;
import org.arcsay.parser.Who;
import org.arcsay.session.Outcome.Why;
import org.jspecify.annotations.Nullable;

/**
 * The capture of one visit, used by one thread: commands in, stored events and outcomes out.
 *
 * <p>Every reading is stored before its outcome is returned. When the store fails, the state stays as it was and the outcome
 * says so; sound, screen and database therefore never disagree.
 */
public final class VisitSession {
    private final Recorder recorder;
    private final HearingDoubt hearing;
    private final Judge judge;
    private final SeriesPlan plan;
    private final Talk talk;
    private final Entries entries;
    private final Answers answers;
    private final Continuation continuation;
    private @Nullable BiFunction<Reading, Visit, Finding> doubt;
    private boolean paused;
    private boolean ended;

    /**
     * @param visit a visit that has begun
     * @param start hand and mode to begin with
     */
    public VisitSession(
            Visit visit,
            Journal journal,
            Judge judge,
            SeriesPlan plan,
            ClinicSettings settings,
            Context start,
            Clock clock) {
        Resolver resolver = new Resolver(settings);
        this.hearing = new HearingDoubt(resolver);
        this.recorder = new Recorder(visit, journal, this::judged, clock);
        this.judge = judge;
        this.plan = plan;
        this.talk = new Talk(start);
        this.entries = new Entries(recorder, resolver, talk);
        this.answers = new Answers(recorder, resolver, entries, talk);
        this.continuation = new Continuation(recorder, talk);
    }

    public Visit visit() {
        return recorder.visit();
    }

    public Context context() {
        return talk.context();
    }

    public Optional<Question> question() {
        return talk.question();
    }

    public boolean isPaused() {
        return paused;
    }

    public boolean isEnded() {
        return ended;
    }

    /** What the plan expects next for the present hand: what follows its last reading, or else the first that is open. */
    public Optional<Slot> next() {
        Optional<Entry> last = entries.lastStanding()
                .filter(entry ->
                        talk.context().side().equals(Optional.of(entry.reading().side())));
        return completeness()
                .flatMap(series -> last.isPresent()
                        ? series.nextAfter(
                                last.get().reading().measure(),
                                last.get().reading().mode())
                        : series.next());
    }

    /** How far the series of the present hand is; empty until a hand is named. */
    public Optional<Completeness> completeness() {
        return talk.context().side().map(side -> Completeness.of(plan, visit(), side));
    }

    /**
     * What came of one utterance. A doubtful reading is stored, held and asked about; any other doubtful command that
     * would change something is not carried out.
     */
    public Outcome handle(Understood said, Heard heard) {
        continuation.begin();
        entries.replacing(List.of());
        return decide(said, heard);
    }

    /** What came of one piece of speech, which may go on with what was said before it. */
    public Outcome handle(Joining.Said said, Heard heard) {
        if (paused || ended) {
            return handle(said.meaning(), heard);
        }
        return switch (said.link()) {
            case NONE -> handle(said.meaning(), heard);
            case WHOLE -> goOn(said.meaning(), heard);
            case UNFINISHED -> unfinished(said.meaning(), heard);
            case UNCLEAR -> endUnclear(said.meaning(), heard);
        };
    }

    /**
     * What came of a sentence of which the first part was dealt with already, as if it had been said without the pause: the
     * whole replaces what the part gave.
     *
     * @param whole the meaning of all of it
     */
    private Outcome goOn(Understood whole, Heard heard) {
        Talk now = talk.copy();
        List<Integer> firstPart = continuation.taken();
        entries.replacing(firstPart);
        try {
            continuation.rewind();
            Outcome outcome = decide(whole, heard);
            if (outcome instanceof Outcome.Refused refused) {
                talk.set(now);
                return refused.why() == Why.NOT_STORED || firstPart.isEmpty()
                        ? outcome
                        : hold(continuation.taken(), whole);
            }
            entries.dropReplaced();
            return outcome;
        } catch (JournalException e) {
            talk.set(now);
            return notStored(e);
        }
    }

    /** What came of a piece with which the sentence is not at its end yet: what it gave so far is asked about. */
    private Outcome unfinished(Understood piece, Heard heard) {
        List<Integer> firstPart = continuation.taken();
        return firstPart.isEmpty() ? decide(piece, heard) : held(firstPart, piece);
    }

    /** What came of sound right after a reading that was not understood: it may have belonged to it, so that is asked about. */
    private Outcome endUnclear(Understood whole, Heard heard) {
        if (continuation.taken().isEmpty()) {
            return handle(whole, heard);
        }
        Outcome outcome = held(continuation.taken(), whole);
        continuation.begin();
        return outcome;
    }

    private Outcome held(List<Integer> numbers, Understood said) {
        try {
            return hold(numbers, said);
        } catch (JournalException e) {
            return notStored(e);
        }
    }

    private Outcome hold(List<Integer> numbers, Understood said) throws JournalException {
        doubt = (reading, visit) -> hearing.endUnclear(said, reading, visit);
        try {
            return entries.hold(numbers);
        } finally {
            doubt = null;
        }
    }

    private Outcome decide(Understood said, Heard heard) {
        boolean givesReading = HearingDoubt.givesReading(said.command());
        if (HearingDoubt.isDoubtful(said) && !givesReading && !paused) {
            unclearContext(said).ifPresent(talk::nameUnclearly);
        }
        if (paused || HearingDoubt.isActedOn(said)) {
            return carryOut(said.command(), heard);
        }
        if (!givesReading) {
            return unclear();
        }
        doubt = (reading, visit) -> hearing.finding(said, reading, visit);
        try {
            Outcome outcome = carryOut(said.command(), heard);
            boolean nothingStored =
                    outcome instanceof Outcome.Asked asked && asked.stored().isEmpty();
            if (!nothingStored) {
                return outcome;
            }
            talk.question = null;
            return unclear();
        } finally {
            doubt = null;
        }
    }

    /** The hand, mode or placement that unclear sound may have named. */
    private Optional<Who> unclearContext(Understood said) {
        return Stream.concat(Stream.of(said.command()), said.rivals().stream())
                .flatMap(command -> named(command).stream())
                .findFirst();
    }

    private Optional<Who> named(Command command) {
        if (command instanceof Command.SetContext set) {
            return Optional.of(set.who());
        }
        if (command instanceof Command.CorrectContext correction) {
            return Optional.of(correction.who());
        }
        return command instanceof Command.OtherHand ? otherSide() : Optional.empty();
    }

    private Outcome unclear() {
        talk.cameToNothing = true;
        if (talk.question != null) {
            return answers.failedAnswer();
        }
        return new Outcome.Refused(Why.NOT_UNDERSTOOD, "That was not clear enough to act on. Say it again.");
    }

    private List<Finding> judged(Reading candidate, Visit visit) {
        List<Finding> findings = new ArrayList<>();
        if (doubt != null) {
            findings.add(doubt.apply(candidate, visit));
        }
        talk.otherContext()
                .flatMap(other -> ContextDoubt.finding(candidate, talk.context(), other))
                .ifPresent(findings::add);
        findings.addAll(judge.judge(candidate, visit));
        return findings;
    }

    private Outcome carryOut(Command command, Heard heard) {
        if (paused && !isControl(command, ControlWord.GO_AHEAD)) {
            return new Outcome.Ignored();
        }
        Outcome outcome = tried(command, heard);
        talk.cameToNothing = outcome instanceof Outcome.Refused;
        return outcome;
    }

    private Outcome tried(Command command, Heard heard) {
        try {
            return dispatch(command, heard);
        } catch (JournalException e) {
            return notStored(e);
        } catch (IllegalArgumentException e) {
            return new Outcome.Refused(Why.IMPOSSIBLE, "That cannot be: " + e.getMessage() + ".");
        }
    }

    private static Outcome notStored(JournalException e) {
        return new Outcome.Refused(Why.NOT_STORED, String.valueOf(e.getMessage()));
    }

    private static boolean isControl(Command command, ControlWord word) {
        return command instanceof Command.Control control && control.word() == word;
    }

    private Outcome dispatch(Command command, Heard heard) throws JournalException {
        if (command instanceof Dictated dictated) {
            return answers.dictated(dictated, heard);
        }
        if (command instanceof Command.Named named) {
            return answers.named(named);
        }
        if (command instanceof Command.Number number) {
            return answers.number(number, heard);
        }
        if (command instanceof Command.Arc arc) {
            return answers.arc(arc, heard);
        }
        if (command instanceof Command.CorrectContext correction) {
            return entries.correctContext(correction.who(), heard);
        }
        if (command instanceof Command.SetContext set) {
            return setContext(set.who());
        }
        if (command instanceof Command.OtherHand) {
            return otherHand();
        }
        if (command instanceof Command.AddRemark remark) {
            return entries.remark(remark);
        }
        if (command instanceof Command.Skip skip) {
            return entries.skip(skip, next(), heard);
        }
        if (command instanceof Command.Yes) {
            return answers.yes();
        }
        if (command instanceof Command.No no) {
            return answers.no(no, heard);
        }
        if (command instanceof Command.KindNamed named) {
            return answers.kindNamed(named.kind());
        }
        if (command instanceof Command.Control control) {
            return control(control.word());
        }
        return answers.rejected((Command.Rejected) command);
    }

    private Outcome setContext(Who who) throws JournalException {
        Optional<Outcome> answer = answers.handNamed(who).or(() -> answers.owedBefore(who));
        if (answer.isPresent()) {
            return answer.get();
        }
        answers.leaveBefore(who);
        talk.name(who);
        return new Outcome.ContextSet(talk.context());
    }

    private Outcome otherHand() throws JournalException {
        Optional<Who> other = otherSide();
        return other.isPresent()
                ? setContext(other.get())
                : new Outcome.Refused(Why.NOTHING_TO_CHANGE, "No hand was named yet. Say left hand or right hand.");
    }

    private Optional<Who> otherSide() {
        return talk.context().side().map(side -> new Who(Optional.of(side.other()), Optional.empty()));
    }

    private Outcome control(ControlWord word) throws JournalException {
        return switch (word) {
            case BEGIN -> new Outcome.Listening();
            case END -> end();
            case UNDO -> entries.undo();
            case SAY_AGAIN -> new Outcome.SayAgain();
            case READ_BACK -> new Outcome.ReadBack(visit().counting());
            case WHAT_IS_MISSING -> new Outcome.Missing(missing());
            case WHERE_AM_I -> position();
            case NEXT -> new Outcome.Next(next());
            case STAND_BY -> pause();
            case GO_AHEAD -> goAhead();
            case SECOND_TRIAL -> answers.secondTrial();
            case REPLACE -> answers.replaceEarlier();
        };
    }

    private List<Slot> missing() {
        return completeness()
                .map(series ->
                        series.open().stream().map(Completeness.Item::slot).toList())
                .orElse(List.of());
    }

    private Outcome position() {
        return new Outcome.Position(talk.context().side(), talk.context().mode(), entries.lastStanding(), next());
    }

    private Outcome pause() {
        paused = true;
        return new Outcome.Paused();
    }

    private Outcome goAhead() {
        paused = false;
        return new Outcome.Listening();
    }

    /** Ends the capture; the review goes on from what is stored. */
    private Outcome end() throws JournalException {
        if (!ended) {
            recorder.end();
            ended = true;
        }
        return new Outcome.Ended();
    }

    /** Ends the capture when the audio or the program ends without the words. */
    public Outcome close() {
        try {
            return end();
        } catch (JournalException e) {
            return notStored(e);
        }
    }
}
