package org.arcsay.session;

import java.time.Clock;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import org.arcsay.analysis.Completeness;
import org.arcsay.analysis.SeriesPlan;
import org.arcsay.model.ClinicSettings;
import org.arcsay.model.Entry;
import org.arcsay.model.Finding;
import org.arcsay.model.Heard;
import org.arcsay.model.Measure;
import org.arcsay.model.Mode;
import org.arcsay.model.Placement;
import org.arcsay.model.Reading;
import org.arcsay.model.Severity;
import org.arcsay.model.Site;
import org.arcsay.model.Slot;
import org.arcsay.model.Value;
import org.arcsay.model.Visit;
import org.arcsay.parser.Command;
import org.arcsay.parser.Command.ControlWord;
import org.arcsay.parser.Command.Dictated;
import org.arcsay.parser.SpokenKind;
import org.arcsay.parser.SpokenReading;
import org.arcsay.parser.SpokenValue;
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
    private static final int MAX_FAILED_ANSWERS = 3;
    private static final String REPEAT_RULE = "repeat.same";

    /** They tell something, or end a pause, and change no reading. */
    private static final Set<ControlWord> HARMLESS = EnumSet.of(
            ControlWord.SAY_AGAIN,
            ControlWord.READ_BACK,
            ControlWord.WHAT_IS_MISSING,
            ControlWord.WHERE_AM_I,
            ControlWord.NEXT,
            ControlWord.STAND_BY,
            ControlWord.GO_AHEAD);

    private final Recorder recorder;
    private final Resolver resolver;
    private final HearingDoubt hearing;
    private final Judge judge;
    private final SeriesPlan plan;
    private Context context;
    private @Nullable Question question;
    private @Nullable Understood doubtful;
    private int failedAnswers;
    /** Whether what was said last came to nothing, so that a bare correction would change a reading not meant. */
    private boolean lastCameToNothing;

    private boolean paused;
    private boolean ended;
    private List<Integer> lastGroup = List.of();

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
        this.resolver = new Resolver(settings);
        this.hearing = new HearingDoubt(resolver);
        this.recorder = new Recorder(visit, journal, this::judged, clock);
        this.judge = judge;
        this.plan = plan;
        this.context = start;
    }

    public Visit visit() {
        return recorder.visit();
    }

    public Context context() {
        return context;
    }

    public Optional<Question> question() {
        return Optional.ofNullable(question);
    }

    public boolean isPaused() {
        return paused;
    }

    public boolean isEnded() {
        return ended;
    }

    /** What the plan expects next for the present hand: what follows its last reading, or else the first that is open. */
    public Optional<Slot> next() {
        Optional<Entry> last = lastStanding().filter(entry -> context.side()
                .equals(Optional.of(entry.reading().side())));
        return completeness()
                .flatMap(series -> last.isPresent()
                        ? series.nextAfter(
                                last.get().reading().measure(),
                                last.get().reading().mode())
                        : series.next());
    }

    /** How far the series of the present hand is; empty until a hand is named. */
    public Optional<Completeness> completeness() {
        return context.side().map(side -> Completeness.of(plan, visit(), side));
    }

    /**
     * What came of one utterance. A doubtful reading is stored, held and asked about; any other doubtful command that
     * would change something is not carried out.
     */
    public Outcome handle(Understood said, Heard heard) {
        if (!HearingDoubt.isDoubtful(said) || paused || isHarmless(said.command())) {
            return handle(said.command(), heard);
        }
        if (!givesReading(said.command())) {
            return unclear();
        }
        doubtful = said;
        try {
            Outcome outcome = handle(said.command(), heard);
            boolean nothingStored =
                    outcome instanceof Outcome.Asked asked && asked.stored().isEmpty();
            if (!nothingStored) {
                return outcome;
            }
            question = null;
            return unclear();
        } finally {
            doubtful = null;
        }
    }

    private static boolean givesReading(Command command) {
        return command instanceof Dictated
                || command instanceof Command.Number
                || command instanceof Command.Arc
                || (command instanceof Command.No no && no.instead().isPresent());
    }

    private static boolean isHarmless(Command command) {
        return command instanceof Command.Rejected
                || (command instanceof Command.Control control && HARMLESS.contains(control.word()));
    }

    private Outcome unclear() {
        lastCameToNothing = true;
        if (question != null) {
            return failedAnswer();
        }
        return new Outcome.Refused(Why.NOT_UNDERSTOOD, "That was not clear enough to act on. Say it again.");
    }

    private List<Finding> judged(Reading candidate, Visit visit) {
        List<Finding> findings = new ArrayList<>();
        if (doubtful != null) {
            findings.add(hearing.finding(doubtful, candidate, visit));
        }
        findings.addAll(judge.judge(candidate, visit));
        return findings;
    }

    /** What came of one command that is sure. */
    public Outcome handle(Command command, Heard heard) {
        if (paused && !isControl(command, ControlWord.GO_AHEAD)) {
            return new Outcome.Ignored();
        }
        Outcome outcome = tried(command, heard);
        lastCameToNothing = outcome instanceof Outcome.Refused;
        return outcome;
    }

    private Outcome tried(Command command, Heard heard) {
        try {
            return dispatch(command, heard);
        } catch (JournalException e) {
            return new Outcome.Refused(Why.NOT_STORED, String.valueOf(e.getMessage()));
        } catch (IllegalArgumentException e) {
            return new Outcome.Refused(Why.IMPOSSIBLE, "That cannot be: " + e.getMessage() + ".");
        }
    }

    private static boolean isControl(Command command, ControlWord word) {
        return command instanceof Command.Control control && control.word() == word;
    }

    private Outcome dispatch(Command command, Heard heard) throws JournalException {
        if (command instanceof Dictated dictated) {
            return dictated(dictated, heard);
        }
        if (command instanceof Command.Named named) {
            return named(named);
        }
        if (command instanceof Command.Number number) {
            return number(number, heard);
        }
        if (command instanceof Command.Arc arc) {
            return arc(arc, heard);
        }
        if (command instanceof Command.CorrectContext correction) {
            return correctContext(correction.who(), heard);
        }
        if (command instanceof Command.SetContext set) {
            return setContext(set.who());
        }
        if (command instanceof Command.OtherHand) {
            return otherHand();
        }
        if (command instanceof Command.AddRemark remark) {
            return remark(remark);
        }
        if (command instanceof Command.Skip skip) {
            return skip(skip, heard);
        }
        if (command instanceof Command.Yes) {
            return yes();
        }
        if (command instanceof Command.No no) {
            return no(no, heard);
        }
        if (command instanceof Command.KindNamed named) {
            return kindNamed(named.kind());
        }
        if (command instanceof Command.Control control) {
            return control(control.word());
        }
        return rejected((Command.Rejected) command);
    }

    // ---- readings ----

    private Outcome dictated(Dictated said, Heard heard) throws JournalException {
        if (saysLagPassively(said)) {
            return new Outcome.Refused(
                    Why.CONTRADICTORY, "A lag is what is lacking on active motion. Say deficit for passive motion.");
        }
        if (said.correction()) {
            return correctLast(said, heard);
        }
        Optional<Outcome> answer = answerWithReading(said, heard);
        if (answer.isPresent()) {
            return answer.get();
        }
        question = null;
        Context here = context.with(said.who());
        if (here.side().isEmpty()) {
            return ask(new Question.WhichHand(said, heard), List.of());
        }
        if (!allResolved(said)) {
            return ask(new Question.WhichKind(said, heard), List.of());
        }
        context = here;
        return take(said, heard);
    }

    private static boolean saysLagPassively(Dictated said) {
        return said.who().mode().filter(mode -> mode == Mode.PASSIVE).isPresent()
                && said.readings().stream().anyMatch(VisitSession::isLag);
    }

    private static boolean isLag(SpokenReading reading) {
        return reading.value() instanceof SpokenValue.Extension extension && extension.kind() == SpokenKind.LAG;
    }

    private boolean allResolved(Dictated said) {
        return said.readings().stream()
                .allMatch(reading -> resolver.value(reading, visit()).isPresent());
    }

    private Outcome take(Dictated said, Heard heard) throws JournalException {
        List<Reading> readings = new ArrayList<>();
        for (SpokenReading spoken : said.readings()) {
            readings.add(reading(spoken, resolver.value(spoken, visit()).orElseThrow()));
        }
        List<Entry> entries = new ArrayList<>();
        List<Integer> group = new ArrayList<>();
        for (Reading reading : readings) {
            Entry entry = recorder.take(reading, heard, OptionalInt.empty(), List.of(), "");
            entries.add(entry);
            group.add(entry.number());
            lastGroup = List.copyOf(group);
        }
        boolean implied = said.readings().stream().anyMatch(SpokenReading::motionImplied);
        return questionAbout(entries)
                .map(asked -> ask(asked, entries))
                .orElseGet(() -> new Outcome.Saved(entries, implied));
    }

    private Reading reading(SpokenReading spoken, Value value) {
        Mode mode = isLag(spoken) ? Mode.ACTIVE : context.mode();
        return new Reading(context.side().orElseThrow(), spoken.measure(), mode, value, placement(spoken.measure()));
    }

    /** A goniometer lies on a joint; distances are taken with a ruler. */
    private Placement placement(Measure measure) {
        return switch (measure.dimension()) {
            case ANGLE, EXTENSION -> context.placement();
            case GAP, SPAN, SCORE -> Placement.UNSTATED;
        };
    }

    private Optional<Question> questionAbout(List<Entry> entries) {
        for (Entry entry : entries) {
            for (Finding finding : entry.findings()) {
                if (finding.severity() != Severity.NOTE) {
                    return Optional.of(questionAbout(entry, finding));
                }
            }
        }
        return Optional.empty();
    }

    private Question questionAbout(Entry entry, Finding finding) {
        if (entry.reading().value() instanceof Value.Unquantified) {
            return new Question.WhichNumber(entry.number());
        }
        Optional<Entry> earlier = finding.rule().equals(REPEAT_RULE)
                ? visit().counting().stream()
                        .filter(other -> other.number() != entry.number()
                                && other.reading().slot().equals(entry.reading().slot()))
                        .reduce((first, second) -> second)
                : Optional.empty();
        return earlier.<Question>map(old -> new Question.Again(entry.number(), old.number(), finding))
                .orElseGet(() -> new Question.IsItRight(entry.number(), finding));
    }

    private Outcome ask(Question asked, List<Entry> stored) {
        question = asked;
        failedAnswers = 0;
        return new Outcome.Asked(asked, stored);
    }

    // ---- a joint first, its number after a pause ----

    private Outcome named(Command.Named named) {
        return ask(
                new Question.WhichValue(named.who(), named.measure(), named.kind(), named.motionImplied()), List.of());
    }

    private Outcome number(Command.Number said, Heard heard) throws JournalException {
        if (said.correction()) {
            return correctLastValue(said, heard);
        }
        if (question instanceof Question.WhichValue asked) {
            return dictated(completed(asked, said), heard);
        }
        if (question instanceof Question.WhichNumber asked) {
            return replaceValue(asked.entry(), said, heard);
        }
        if (question instanceof Question.IsItRight asked) {
            return replaceValue(asked.entry(), said, heard);
        }
        if (question != null) {
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

    private Outcome arc(Command.Arc arc, Heard heard) throws JournalException {
        if (question instanceof Question.WhichValue asked && !arc.correction()) {
            return dictated(
                    new Dictated(asked.who(), SpokenReading.arc(asked.measure().site(), arc.from(), arc.to()), false),
                    heard);
        }
        if (arc.correction() && lastGroup.size() == 2) {
            Site site = recorder.entry(lastGroup.get(0)).reading().measure().site();
            return correctLast(new Dictated(Who.UNSAID, SpokenReading.arc(site, arc.from(), arc.to()), true), heard);
        }
        return noJoint(arc.from().toPlainString() + " to " + arc.to().toPlainString());
    }

    // ---- corrections and undo ----

    private Outcome correctLast(Dictated said, Heard heard) throws JournalException {
        List<Integer> old = standing(lastGroup);
        if (old.isEmpty()) {
            return nothingToChange();
        }
        if (!allResolved(said)) {
            return ask(new Question.WhichKind(said, heard), List.of());
        }
        Reading last = recorder.entry(old.get(0)).reading();
        context = new Context(Optional.of(last.side()), last.mode(), context.placement()).with(said.who());
        if (old.size() == 1 && said.readings().size() == 1) {
            SpokenReading spoken = said.readings().get(0);
            Value value = resolver.value(spoken, visit()).orElseThrow();
            return replace(old.get(0), reading(spoken, value), heard, "corrected by voice");
        }
        for (int number : old) {
            recorder.reject(number, "corrected by voice");
        }
        return take(said, heard);
    }

    private Outcome correctLastValue(Command.Number said, Heard heard) throws JournalException {
        if (lastCameToNothing) {
            return new Outcome.Refused(
                    Why.NOTHING_TO_CHANGE,
                    "What you said before was not stored, so it is not clear what to correct. Say the joint with it.");
        }
        List<Integer> last = standing(lastGroup);
        if (last.isEmpty()) {
            return nothingToChange();
        }
        if (last.size() > 1) {
            return new Outcome.Refused(
                    Why.NOTHING_TO_CHANGE,
                    "The last utterance gave several readings. Say which one with the correction.");
        }
        return replaceValue(last.get(0), said, heard);
    }

    private Outcome replaceValue(int number, Command.Number said, Heard heard) throws JournalException {
        Reading old = recorder.entry(number).reading();
        SpokenValue spoken = SpokenValues.inPlaceOf(old, said);
        Optional<Value> value = resolver.value(new SpokenReading(old.measure(), spoken, false), visit());
        if (value.isEmpty()) {
            return new Outcome.Refused(Why.NOT_UNDERSTOOD, "Say hyperextension or deficit with the number.");
        }
        return replace(number, old.withValue(value.get()), heard, "corrected by voice");
    }

    private Outcome correctContext(Who who, Heard heard) throws JournalException {
        List<Integer> last = standing(lastGroup);
        if (last.isEmpty()) {
            return nothingToChange();
        }
        context = context.with(who);
        Outcome outcome = nothingToChange();
        for (int number : last) {
            Reading old = recorder.entry(number).reading();
            Reading moved = old.withSide(who.side().orElse(old.side()))
                    .withMode(who.mode().orElse(old.mode()))
                    .withPlacement(who.placement().orElse(old.placement()));
            outcome = replace(number, moved, heard, "hand or mode corrected by voice");
        }
        return outcome;
    }

    private Outcome replace(int number, Reading reading, Heard heard, String why) throws JournalException {
        Entry before = recorder.entry(number);
        Entry now = recorder.take(reading, heard, OptionalInt.of(number), before.remarks(), why);
        question = null;
        lastGroup = lastGroup.stream().map(n -> n == number ? now.number() : n).toList();
        if (!lastGroup.contains(now.number())) {
            lastGroup = List.of(now.number());
        }
        return questionAbout(List.of(now))
                .map(asked -> ask(asked, List.of(now)))
                .orElseGet(() -> new Outcome.Corrected(before, now));
    }

    private Outcome undo() throws JournalException {
        question = null;
        List<Integer> group = standing(lastGroup);
        if (group.isEmpty()) {
            group = visit().counting().stream()
                    .map(Entry::number)
                    .reduce((first, second) -> second)
                    .map(List::of)
                    .orElse(List.of());
        }
        if (group.isEmpty()) {
            return nothingToChange();
        }
        List<Entry> undone = new ArrayList<>();
        List<Entry> restored = new ArrayList<>();
        for (int number : group) {
            Entry entry = recorder.reject(number, "disregarded by voice");
            undone.add(entry);
            if (entry.replaces().isPresent()) {
                restored.add(restore(recorder.entry(entry.replaces().getAsInt())));
            }
        }
        lastGroup = restored.stream().map(Entry::number).toList();
        return new Outcome.Undone(undone, restored);
    }

    private Entry restore(Entry superseded) throws JournalException {
        return recorder.take(
                superseded.reading(),
                superseded.heard(),
                OptionalInt.empty(),
                superseded.remarks(),
                "correction taken back");
    }

    private List<Integer> standing(List<Integer> numbers) {
        return numbers.stream().filter(n -> recorder.entry(n).counts()).toList();
    }

    private static Outcome nothingToChange() {
        return new Outcome.Refused(Why.NOTHING_TO_CHANGE, "There is no reading to change yet.");
    }

    // ---- context, remarks, skipping ----

    private Outcome setContext(Who who) throws JournalException {
        if (question instanceof Question.WhichHand asked && who.side().isPresent()) {
            question = null;
            Who both = new Who(who.side(), asked.pending().who().mode());
            return dictated(new Dictated(both, asked.pending().readings(), false), asked.heard());
        }
        context = context.with(who);
        return new Outcome.ContextSet(context);
    }

    private Outcome otherHand() {
        if (context.side().isEmpty()) {
            return new Outcome.Refused(Why.NOTHING_TO_CHANGE, "No hand was named yet. Say left hand or right hand.");
        }
        context = context.with(context.side().get().other());
        return new Outcome.ContextSet(context);
    }

    private Outcome remark(Command.AddRemark said) throws JournalException {
        List<Integer> last = standing(lastGroup);
        if (last.isEmpty()) {
            return nothingToChange();
        }
        int number = last.get(last.size() - 1);
        return new Outcome.Remarked(recorder.remark(number, said.remark()), said.remark());
    }

    private Outcome skip(Command.Skip skip, Heard heard) throws JournalException {
        Optional<Slot> expected = next();
        if (expected.isEmpty()) {
            return new Outcome.Refused(Why.NOTHING_EXPECTED, "Nothing is expected now, so there is nothing to skip.");
        }
        Slot slot = expected.get();
        Reading reading = new Reading(
                slot.side(), slot.measure(), slot.mode(), new Value.NotTested(skip.reason()), Placement.UNSTATED);
        Entry entry = recorder.take(reading, heard, OptionalInt.empty(), List.of(), "skipped by voice");
        lastGroup = List.of(entry.number());
        return new Outcome.Saved(List.of(entry), false);
    }

    // ---- answers ----

    private Optional<Outcome> answerWithReading(Dictated said, Heard heard) throws JournalException {
        if (!(question instanceof Question.IsItRight asked) || said.readings().size() != 1) {
            return Optional.empty();
        }
        Reading doubted = recorder.entry(asked.entry()).reading();
        SpokenReading spoken = said.readings().get(0);
        Optional<Value> value = resolver.value(spoken, visit());
        if (value.isEmpty() || !spoken.measure().equals(doubted.measure())) {
            return Optional.empty();
        }
        Context here = new Context(Optional.of(doubted.side()), doubted.mode(), doubted.placement()).with(said.who());
        Reading again =
                new Reading(here.side().orElseThrow(), spoken.measure(), here.mode(), value.get(), here.placement());
        return Optional.of(
                again.equals(doubted) ? yes() : replace(asked.entry(), again, heard, "said again in answer"));
    }

    private Outcome yes() throws JournalException {
        if (question instanceof Question.IsItRight asked) {
            question = null;
            return new Outcome.Kept(recorder.release(asked.entry(), "affirmed by voice"));
        }
        return question == null ? noQuestion() : failedAnswer();
    }

    private Outcome no(Command.No no, Heard heard) throws JournalException {
        if (question == null) {
            return noQuestion();
        }
        if (question instanceof Question.IsItRight asked) {
            return no.instead().isPresent()
                    ? replaceValue(asked.entry(), no.instead().get(), heard)
                    : takeBack(asked.entry());
        }
        if (question instanceof Question.Again asked) {
            return takeBack(asked.entry());
        }
        question = null;
        return new Outcome.Listening();
    }

    private Outcome takeBack(int entry) throws JournalException {
        question = null;
        return new Outcome.Undone(List.of(recorder.reject(entry, "answered no by voice")), List.of());
    }

    private Outcome kindNamed(SpokenKind kind) throws JournalException {
        if (question instanceof Question.WhichKind asked) {
            question = null;
            List<SpokenReading> clear = asked.pending().readings().stream()
                    .map(reading -> SpokenValues.withKind(reading, kind))
                    .toList();
            return dictated(
                    new Dictated(asked.pending().who(), clear, asked.pending().correction()), asked.heard());
        }
        return question == null ? noQuestion() : failedAnswer();
    }

    private Outcome secondTrial() throws JournalException {
        if (question instanceof Question.Again asked) {
            question = null;
            return new Outcome.Kept(recorder.release(asked.entry(), "second trial"));
        }
        return question == null ? noQuestion() : failedAnswer();
    }

    private Outcome replaceEarlier() throws JournalException {
        if (question instanceof Question.Again asked) {
            question = null;
            Entry before = recorder.reject(asked.earlier(), "replaced by entry " + asked.entry());
            return new Outcome.Corrected(before, recorder.release(asked.entry(), "replaces entry " + asked.earlier()));
        }
        return question == null ? noQuestion() : failedAnswer();
    }

    private static Outcome noQuestion() {
        return new Outcome.Refused(Why.NO_QUESTION, "Nothing was asked.");
    }

    /** After three answers that do not fit, the question is dropped; what is stored stays flagged for the review. */
    private Outcome failedAnswer() {
        failedAnswers++;
        Question asked = question;
        if (failedAnswers >= MAX_FAILED_ANSWERS || asked == null) {
            question = null;
            return new Outcome.Refused(Why.NOT_UNDERSTOOD, "Left for the review.");
        }
        return new Outcome.Refused(Why.NOT_UNDERSTOOD, asked.sentence());
    }

    private Outcome rejected(Command.Rejected rejected) {
        return question == null ? new Outcome.Refused(Why.NOT_UNDERSTOOD, rejected.detail()) : failedAnswer();
    }

    // ---- control ----

    private Outcome control(ControlWord word) throws JournalException {
        return switch (word) {
            case BEGIN -> new Outcome.Listening();
            case END -> end();
            case UNDO -> undo();
            case SAY_AGAIN -> new Outcome.SayAgain();
            case READ_BACK -> new Outcome.ReadBack(visit().counting());
            case WHAT_IS_MISSING -> new Outcome.Missing(missing());
            case WHERE_AM_I -> position();
            case NEXT -> new Outcome.Next(next());
            case STAND_BY -> pause();
            case GO_AHEAD -> goAhead();
            case SECOND_TRIAL -> secondTrial();
            case REPLACE -> replaceEarlier();
        };
    }

    private List<Slot> missing() {
        return completeness()
                .map(series ->
                        series.open().stream().map(Completeness.Item::slot).toList())
                .orElse(List.of());
    }

    private Outcome position() {
        return new Outcome.Position(context.side(), context.mode(), lastStanding(), next());
    }

    private Optional<Entry> lastStanding() {
        return standing(lastGroup).stream().reduce((first, second) -> second).map(recorder::entry);
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
            return new Outcome.Refused(Why.NOT_STORED, String.valueOf(e.getMessage()));
        }
    }
}
