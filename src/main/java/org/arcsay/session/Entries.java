package org.arcsay.session;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import org.arcsay.model.Entry;
import org.arcsay.model.Finding;
import org.arcsay.model.Heard;
import org.arcsay.model.Measure;
import org.arcsay.model.Mode;
import org.arcsay.model.Placement;
import org.arcsay.model.Reading;
import org.arcsay.model.Severity;
import org.arcsay.model.Slot;
import org.arcsay.model.Value;
import org.arcsay.parser.Command;
import org.arcsay.parser.Command.Dictated;
import org.arcsay.parser.SpokenKind;
import org.arcsay.parser.SpokenReading;
import org.arcsay.parser.SpokenValue;
import org.arcsay.parser.Who;
import org.arcsay.session.Outcome.Why;

/** Takes, corrects and takes back readings: only the thread that owns the session may use it. */
final class Entries {
    private static final String REPEAT_RULE = "repeat.same";

    private final Recorder recorder;
    private final Resolver resolver;
    private final Talk talk;

    /** What the first part of a sentence took that the whole of it replaces. */
    private final List<Integer> firstPart = new ArrayList<>();

    Entries(Recorder recorder, Resolver resolver, Talk talk) {
        this.recorder = recorder;
        this.resolver = resolver;
        this.talk = talk;
    }

    /** From now on readings go first into the places of these entries. */
    void replacing(List<Integer> entries) {
        firstPart.clear();
        firstPart.addAll(entries);
    }

    /** Takes back what the whole sentence does not hold. */
    void dropReplaced() throws JournalException {
        for (int number : standing(List.copyOf(firstPart))) {
            recorder.reject(number, Continuation.WHY);
        }
        firstPart.clear();
    }

    /** Holds entries and asks about the last of them. */
    Outcome hold(List<Integer> numbers) throws JournalException {
        List<Entry> held = new ArrayList<>();
        List<Integer> group = new ArrayList<>();
        for (int number : numbers) {
            Entry old = recorder.entry(number);
            Entry now = recorder.take(
                    old.reading(), old.heard(), OptionalInt.of(number), old.remarks(), "its end was not understood");
            held.add(now);
            group.add(now.number());
        }
        talk.lastGroup = List.copyOf(group);
        Entry last = held.get(held.size() - 1);
        return ask(questionAbout(last, last.findings().get(0)), held);
    }

    static boolean saysLagPassively(Dictated said) {
        return said.who().mode().filter(mode -> mode == Mode.PASSIVE).isPresent()
                && said.readings().stream().anyMatch(Entries::isLag);
    }

    private static boolean isLag(SpokenReading reading) {
        return reading.value() instanceof SpokenValue.Extension extension && extension.kind() == SpokenKind.LAG;
    }

    boolean allResolved(Dictated said) {
        return said.readings().stream()
                .allMatch(reading -> resolver.value(reading, recorder.visit()).isPresent());
    }

    Outcome take(Dictated said, Heard heard) throws JournalException {
        List<Reading> readings = new ArrayList<>();
        for (SpokenReading spoken : said.readings()) {
            readings.add(
                    reading(spoken, resolver.value(spoken, recorder.visit()).orElseThrow()));
        }
        List<Entry> entries = new ArrayList<>();
        List<Integer> group = new ArrayList<>();
        Optional<Entry> changed = Optional.of(readings.get(0))
                .filter(only -> readings.size() == 1)
                .flatMap(only ->
                        firstPart(only, readings).filter(part -> !part.reading().equals(only)));
        for (Reading reading : readings) {
            Optional<Entry> old = firstPart(reading, readings);
            Entry entry = old.isPresent()
                    ? instead(old.get(), reading, heard)
                    : recorder.take(reading, heard, OptionalInt.empty(), List.of(), "");
            entries.add(entry);
            group.add(entry.number());
            talk.lastGroup = List.copyOf(group);
        }
        boolean implied = said.readings().stream().anyMatch(SpokenReading::motionImplied);
        return questionAbout(entries).map(asked -> ask(asked, entries)).orElseGet(() -> changed.<Outcome>map(
                        old -> new Outcome.Corrected(old, entries.get(0)))
                .orElseGet(() -> new Outcome.Saved(entries, implied)));
    }

    private Entry instead(Entry old, Reading reading, Heard heard) throws JournalException {
        firstPart.remove((Integer) old.number());
        return recorder.take(reading, heard, OptionalInt.of(old.number()), old.remarks(), Continuation.WHY);
    }

    /** What the first part of the sentence took for this reading: the same slot, or else one that the whole does not name. */
    private Optional<Entry> firstPart(Reading reading, List<Reading> whole) {
        List<Entry> parts = firstPart.stream().map(recorder::entry).toList();
        return parts.stream()
                .filter(part -> part.reading().slot().equals(reading.slot()))
                .findFirst()
                .or(() -> parts.stream()
                        .filter(part -> whole.stream().noneMatch(other -> other.slot()
                                .equals(part.reading().slot())))
                        .findFirst());
    }

    private Reading reading(SpokenReading spoken, Value value) {
        return reading(talk.context(), spoken, value);
    }

    /** The reading as it would be taken in a context that names a hand. */
    static Reading reading(Context here, SpokenReading spoken, Value value) {
        Mode mode = isLag(spoken) ? Mode.ACTIVE : here.mode();
        Measure measure = spoken.measure();
        return new Reading(here.side().orElseThrow(), measure, mode, value, placement(here, measure));
    }

    /** A goniometer lies on a joint; distances are taken with a ruler. */
    private static Placement placement(Context here, Measure measure) {
        return switch (measure.dimension()) {
            case ANGLE, EXTENSION -> here.placement();
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
                ? recorder.visit().counting().stream()
                        .filter(other -> other.number() != entry.number()
                                && other.reading().slot().equals(entry.reading().slot()))
                        .reduce((first, second) -> second)
                : Optional.empty();
        return earlier.<Question>map(old -> new Question.Again(entry.number(), old.number(), finding))
                .orElseGet(() -> new Question.IsItRight(entry.number(), finding));
    }

    Outcome ask(Question asked, List<Entry> stored) {
        talk.question = asked;
        talk.failedAnswers = 0;
        return new Outcome.Asked(asked, stored);
    }

    Outcome correctLast(Dictated said, Heard heard) throws JournalException {
        List<Integer> old = standing(talk.lastGroup);
        if (old.isEmpty()) {
            return nothingToChange();
        }
        if (!allResolved(said)) {
            return ask(new Question.WhichKind(said, heard), List.of());
        }
        Reading last = recorder.entry(old.get(0)).reading();
        talk.goBackTo(new Context(
                Optional.of(last.side()), last.mode(), talk.context().placement()));
        talk.name(said.who());
        if (old.size() == 1 && said.readings().size() == 1) {
            SpokenReading spoken = said.readings().get(0);
            Value value = resolver.value(spoken, recorder.visit()).orElseThrow();
            return replace(old.get(0), reading(spoken, value), heard, "corrected by voice");
        }
        for (int number : old) {
            recorder.reject(number, "corrected by voice");
        }
        return take(said, heard);
    }

    Outcome correctLastValue(Command.Number said, Heard heard) throws JournalException {
        if (talk.cameToNothing) {
            return new Outcome.Refused(
                    Why.NOTHING_TO_CHANGE,
                    "What you said before was not stored, so it is not clear what to correct. Say the joint with it.");
        }
        List<Integer> last = standing(talk.lastGroup);
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

    Outcome replaceValue(int number, Command.Number said, Heard heard) throws JournalException {
        Reading old = recorder.entry(number).reading();
        SpokenValue spoken = SpokenValues.inPlaceOf(old, said);
        Optional<Value> value = resolver.value(new SpokenReading(old.measure(), spoken, false), recorder.visit());
        if (value.isEmpty()) {
            return new Outcome.Refused(Why.NOT_UNDERSTOOD, "Say hyperextension or deficit with the number.");
        }
        return replace(number, old.withValue(value.get()), heard, "corrected by voice");
    }

    Outcome correctContext(Who who, Heard heard) throws JournalException {
        List<Integer> last = standing(talk.lastGroup);
        if (last.isEmpty()) {
            return nothingToChange();
        }
        talk.name(who);
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

    Outcome replace(int number, Reading reading, Heard heard, String why) throws JournalException {
        Entry before = recorder.entry(number);
        Entry now = recorder.take(reading, heard, OptionalInt.of(number), before.remarks(), why);
        talk.question = null;
        talk.lastGroup =
                talk.lastGroup.stream().map(n -> n == number ? now.number() : n).toList();
        if (!talk.lastGroup.contains(now.number())) {
            talk.lastGroup = List.of(now.number());
        }
        return questionAbout(List.of(now))
                .map(asked -> ask(asked, List.of(now)))
                .orElseGet(() -> new Outcome.Corrected(before, now));
    }

    Outcome undo() throws JournalException {
        talk.question = null;
        List<Integer> group = standing(talk.lastGroup);
        if (group.isEmpty()) {
            group = recorder.visit().counting().stream()
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
            Optional<Entry> older = older(entry);
            if (older.isPresent()) {
                restored.add(restore(older.get()));
            }
        }
        talk.lastGroup = restored.stream().map(Entry::number).toList();
        return new Outcome.Undone(undone, restored);
    }

    /** What an entry corrected; the first part of its own sentence is none. */
    private Optional<Entry> older(Entry entry) {
        if (entry.replaces().isEmpty()) {
            return Optional.empty();
        }
        Entry old = recorder.entry(entry.replaces().getAsInt());
        boolean sameSentence = old.heard().source() == Heard.Source.VOICE
                && entry.heard().source() == Heard.Source.VOICE
                && old.heard().start().equals(entry.heard().start());
        return sameSentence ? older(old) : Optional.of(old);
    }

    private Entry restore(Entry superseded) throws JournalException {
        return recorder.take(
                superseded.reading(),
                superseded.heard(),
                OptionalInt.empty(),
                superseded.remarks(),
                "correction taken back");
    }

    List<Integer> standing(List<Integer> numbers) {
        return numbers.stream().filter(n -> recorder.entry(n).counts()).toList();
    }

    static Outcome nothingToChange() {
        return new Outcome.Refused(Why.NOTHING_TO_CHANGE, "There is no reading to change yet.");
    }

    Outcome remark(Command.AddRemark said) throws JournalException {
        List<Integer> last = standing(talk.lastGroup);
        if (last.isEmpty()) {
            return nothingToChange();
        }
        int number = last.get(last.size() - 1);
        return new Outcome.Remarked(recorder.remark(number, said.remark()), said.remark());
    }

    Outcome skip(Command.Skip skip, Optional<Slot> expected, Heard heard) throws JournalException {
        if (expected.isEmpty()) {
            return new Outcome.Refused(Why.NOTHING_EXPECTED, "Nothing is expected now, so there is nothing to skip.");
        }
        Slot slot = expected.get();
        Reading reading = new Reading(
                slot.side(), slot.measure(), slot.mode(), new Value.NotTested(skip.reason()), Placement.UNSTATED);
        Entry entry = recorder.take(reading, heard, OptionalInt.empty(), List.of(), "skipped by voice");
        talk.lastGroup = List.of(entry.number());
        return questionAbout(List.of(entry))
                .map(asked -> ask(asked, List.of(entry)))
                .orElseGet(() -> new Outcome.Saved(List.of(entry), false));
    }

    Optional<Entry> lastStanding() {
        return standing(talk.lastGroup).stream()
                .reduce((first, second) -> second)
                .map(recorder::entry);
    }
}
