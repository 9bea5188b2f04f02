package org.arcsay.review;

import java.time.OffsetDateTime;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.Deque;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import java.util.function.Supplier;
import org.arcsay.model.Entry;
import org.arcsay.model.EntryStatus;
import org.arcsay.model.Heard;
import org.arcsay.model.JournalEvent;
import org.arcsay.model.JournalEvent.Confirmed;
import org.arcsay.model.JournalEvent.Rejected;
import org.arcsay.model.JournalEvent.Released;
import org.arcsay.model.JournalEvent.Taken;
import org.arcsay.model.Measure;
import org.arcsay.model.Reading;
import org.arcsay.model.Severity;
import org.arcsay.model.Value.NotTested;
import org.arcsay.model.Value.NotTestedReason;
import org.arcsay.model.Visit;
import org.arcsay.session.Journal;
import org.arcsay.session.Judge;

/**
 * The review of one visit, used by one thread: every entry is looked at, then confirmed, corrected or rejected.
 *
 * <p>Every change is appended to the journal before it shows; nothing is overwritten, and undo is one more event. An entry can
 * only be confirmed after it was shown, a held one only after it was answered, and a doubtful one only by itself.
 */
public final class ReviewModel {
    private final Ledger ledger;
    private final Judge judge;
    private final ReviewContext context;
    private final DraftBox drafts;
    private final Set<Integer> seen = new HashSet<>();
    private final Deque<UndoStep> undoable = new ArrayDeque<>();
    private final List<Runnable> listeners = new ArrayList<>();

    private ReviewModel(Ledger ledger, Judge judge, ReviewContext context, DraftBox drafts) {
        this.ledger = ledger;
        this.judge = judge;
        this.context = context;
        this.drafts = drafts;
    }

    /**
     * Opens a visit for review.
     *
     * @param visit the visit as the journal leads to it
     * @param past the journal's events, for the reasons in the history; may be empty
     * @param journal where changes go
     * @param judge says what is unusual about a corrected or added reading
     * @param context who reviews, when and by which settings
     * @param drafts where half-typed forms survive a closed window
     */
    public static ReviewModel open(
            Visit visit, List<JournalEvent> past, Journal journal, Judge judge, ReviewContext context, Drafts drafts) {
        return new ReviewModel(new Ledger(visit, past, journal), judge, context, new DraftBox(drafts, visit));
    }

    /** Calls back after every change of what this model shows. */
    public void onChange(Runnable listener) {
        listeners.add(listener);
    }

    /** Makes the report of this visit, where there is one to be had. */
    public Optional<VisitReport> report() {
        return context.report();
    }

    public Visit visit() {
        return ledger.visit();
    }

    public List<Measure> measures() {
        return MeasureChoices.of(context.measures(), visit());
    }

    /** Every entry that counts: those with a doubt now or before correction first, then in the order in which they were taken. */
    public List<ReviewRow> rows() {
        Comparator<ReviewRow> doubtFirst = Comparator.comparing(row -> !everDoubtful(row.number()));
        return visit().counting().stream()
                .map(this::row)
                .sorted(doubtFirst.thenComparing(row -> origin(row.number())))
                .toList();
    }

    /** Entries that were taken back or rejected, latest first. */
    public List<ReviewRow> rejected() {
        return visit().entries().stream()
                .filter(entry ->
                        entry.status() == EntryStatus.REJECTED && ledger.latest(entry.number()) == entry.number())
                .map(this::row)
                .sorted(Comparator.comparing(ReviewRow::number).reversed())
                .toList();
    }

    /** The row of an entry, or of the one that replaced it. */
    public Optional<ReviewRow> row(int number) {
        return visit().entry(ledger.latest(number)).filter(Entry::counts).map(this::row);
    }

    public int confirmedCount() {
        return (int) visit().counting().stream()
                .filter(entry -> entry.status() == EntryStatus.CONFIRMED)
                .count();
    }

    /** The first unconfirmed row after that number in the order of {@link #rows}, going round at the end. */
    public OptionalInt nextUnconfirmed(int number) {
        List<ReviewRow> rows = rows();
        int at = 0;
        while (at < rows.size() && rows.get(at).number() != number) {
            at++;
        }
        for (int step = 1; step <= rows.size(); step++) {
            Entry entry = rows.get((at + step) % rows.size()).entry();
            if (entry.status() != EntryStatus.CONFIRMED) {
                return OptionalInt.of(entry.number());
            }
        }
        return OptionalInt.empty();
    }

    /** Tells the model that the details of an entry were shown to the reviewer. */
    public void markSeen(int number) {
        if (seen.add(number)) {
            changed();
        }
    }

    /** Why this entry cannot be confirmed now, or empty when it can. */
    public Optional<String> obstacle(int number) {
        Optional<ReviewRow> row = row(number);
        if (row.isEmpty()) {
            return Optional.of("This reading no longer counts. Choose another one.");
        }
        Entry entry = row.get().entry();
        if (entry.status() == EntryStatus.CONFIRMED) {
            return Optional.of("This reading is already confirmed.");
        }
        if (entry.status() == EntryStatus.HELD) {
            return Optional.of(
                    "This reading is held. Keep it as said, correct it or reject it; then it can be confirmed.");
        }
        if (unsaved().isPresent()) {
            return Optional.of("An earlier change is not saved yet. Save it again or discard it first.");
        }
        if (drafts.of(entry.number()).isPresent()) {
            return Optional.of("A correction of this reading is half typed. Save or cancel the correction first.");
        }
        return row.get().seen() ? Optional.empty() : Optional.of("Look at this reading first.");
    }

    public Outcome confirm(int number) {
        Optional<String> obstacle = obstacle(number);
        return obstacle.isPresent() ? new Outcome.Refused(obstacle.get()) : report(confirm(current(number)));
    }

    /** Why the plausible readings cannot be confirmed together now, or empty when they can. */
    public Optional<String> obstacleToConfirmAll() {
        if (unsaved().isPresent()) {
            return Optional.of("An earlier change is not saved yet.");
        }
        List<ReviewRow> rows = rows();
        long unseen = rows.stream().filter(row -> !row.seen()).count();
        if (unseen > 0) {
            return Optional.of(Sentences.count((int) unseen, "reading") + " not looked at yet.");
        }
        if (rows.stream().noneMatch(this::confirmableTogether)) {
            return Optional.of("No plausible reading is left to confirm; doubtful ones are confirmed one by one.");
        }
        return Optional.empty();
    }

    /** Confirms every plausible reading; doubtful and held ones stay for a confirmation of their own. */
    public Outcome confirmAll() {
        Optional<String> obstacle = obstacleToConfirmAll();
        if (obstacle.isPresent()) {
            return new Outcome.Refused(obstacle.get());
        }
        List<Supplier<Change>> undo = new ArrayList<>();
        List<Entry> open = rows().stream()
                .filter(this::confirmableTogether)
                .map(ReviewRow::entry)
                .toList();
        for (Entry entry : open) {
            Outcome outcome = ledger.store(confirmation(entry, () -> undo.add(0, () -> unconfirmed(entry))));
            if (!(outcome instanceof Outcome.Done)) {
                pushConfirmations(undo);
                return report(outcome);
            }
        }
        pushConfirmations(undo);
        return report(new Outcome.Done(Sentences.count(open.size(), "reading") + " confirmed."));
    }

    /**
     * Answers a held entry: it stays as it was said.
     *
     * @param why the reviewer's reason, or empty
     */
    public Outcome keepAsSaid(int number, String why) {
        Entry entry = current(number);
        if (entry.status() != EntryStatus.HELD) {
            return new Outcome.Refused("This reading is not held, so there is nothing to answer.");
        }
        Released event = new Released(now(), entry.number(), context.by(), why.strip());
        return report(ledger.store(new Change(
                event,
                entry.number(),
                "Kept as said: " + entry.reading().words() + ". It can be confirmed now.",
                () -> push("the answer to " + name(entry), () -> again(entry, true, "answer taken back")))));
    }

    /**
     * Takes an entry out of the visit; it stays in the history.
     *
     * @param why the reason; required
     */
    public Outcome reject(int number, String why) {
        if (why.isBlank()) {
            return new Outcome.Refused("Give a reason for rejecting this reading.");
        }
        Entry entry = current(number);
        if (!entry.counts()) {
            return new Outcome.Refused("This reading is already rejected.");
        }
        return report(ledger.store(
                rejection(entry, why.strip(), "Rejected: " + entry.reading().words() + ".", () -> {
                    drafts.drop(entry.number());
                    push("the rejection of " + name(entry), () -> restored(entry));
                })));
    }

    /** The half-typed form of an entry, or a fresh one filled with it. */
    public Draft draftOf(int number) {
        return drafts.of(number).orElseGet(() -> number == Draft.NEW ? Draft.empty() : Draft.of(current(number)));
    }

    public boolean hasDraft(int number) {
        return drafts.of(number).isPresent();
    }

    /** Keeps a form as it is being typed. A form that equals the entry is no draft and is forgotten. */
    public void keepDraft(Draft draft) {
        boolean before = hasDraft(draft.entry());
        boolean untouched = draft.equals(draft.isNew() ? Draft.empty() : Draft.of(current(draft.entry())));
        if (untouched) {
            drafts.drop(draft.entry());
        } else {
            drafts.put(draft);
        }
        if (before == untouched) {
            changed();
        }
    }

    /** Forgets a half-typed form. */
    public void dropDraft(int number) {
        drafts.drop(number);
        changed();
    }

    /** Why half-typed forms are not being kept at the moment, or empty. */
    public String draftProblem() {
        return drafts.problem();
    }

    /** What a draft would become, or what is wrong with it. */
    public DraftReading read(Draft draft) {
        DraftReading read = DraftReader.read(draft, context.settings());
        return read.reading()
                .map(reading -> read.withFindings(judge.judge(reading, without(draft.entry()))))
                .orElse(read);
    }

    /** Stores a draft: a correction replaces its entry by a new one, a missed reading is added. Both start unconfirmed. */
    public Outcome save(Draft draft) {
        DraftReading read = read(draft);
        if (read.reading().isEmpty()) {
            return new Outcome.Refused(read.problems().get(0).message());
        }
        return draft.isNew() ? add(draft, read) : correct(draft, read);
    }

    /** What undo would take back, or empty when there is nothing. */
    public Optional<String> undoWords() {
        return Optional.ofNullable(undoable.peek()).map(UndoStep::words);
    }

    /** Takes back the last change of this review by adding its opposite. */
    public Outcome undo() {
        UndoStep step = undoable.peek();
        if (step == null) {
            return new Outcome.Refused("Nothing was changed in this review yet.");
        }
        while (!step.events().isEmpty()) {
            Supplier<Change> next = step.events().get(0);
            Change change = next.get();
            Outcome outcome = ledger.store(new Change(change.event(), change.row(), change.done(), () -> {
                step.events().remove(next);
                if (step.events().isEmpty()) {
                    undoable.remove(step);
                }
                change.whenStored().run();
            }));
            if (!(outcome instanceof Outcome.Done)) {
                return report(outcome);
            }
        }
        return report(new Outcome.Done("Taken back: " + step.words() + "."));
    }

    /** The change that could not be stored, if there is one. */
    public Optional<Unsaved> unsaved() {
        return ledger.unsaved();
    }

    public Outcome retry() {
        return report(ledger.retry());
    }

    /** Gives up the change that could not be stored; a half-typed form stays. */
    public void discardUnsaved() {
        ledger.discard();
        changed();
    }

    private Outcome add(Draft draft, DraftReading read) {
        Taken event = taken(draft, read, OptionalInt.empty(), reason(draft, "missed reading added in review"));
        Reading reading = read.reading().orElseThrow();
        return report(ledger.store(new Change(event, Draft.NEW, "Added: " + reading.words() + ".", () -> {
            drafts.drop(Draft.NEW);
            seen.add(event.entry());
            Entry entry = current(event.entry());
            push(
                    "the addition of " + name(entry),
                    () -> rejection(current(entry.number()), "addition taken back", "Taken back.", () -> {}));
        })));
    }

    private Outcome correct(Draft draft, DraftReading read) {
        Entry old = current(draft.entry());
        if (!old.counts()) {
            return new Outcome.Refused("This reading was rejected. Undo the rejection before correcting it.");
        }
        Reading reading = read.reading().orElseThrow();
        if (reading.equals(old.reading()) && read.remarks().equals(old.remarks())) {
            return new Outcome.Refused("Nothing was changed. Change a field, or cancel the correction.");
        }
        Taken event = taken(draft, read, OptionalInt.of(old.number()), reason(draft, "corrected in review"));
        return report(ledger.store(new Change(event, old.number(), "Corrected: " + reading.words() + ".", () -> {
            drafts.drop(old.number());
            seen.add(event.entry());
            push(
                    "the correction of " + name(old),
                    () -> again(old, old.status() == EntryStatus.HELD, "correction taken back"));
        })));
    }

    private static String reason(Draft draft, String otherwise) {
        return draft.why().isBlank() ? otherwise : draft.why().strip();
    }

    private Taken taken(Draft draft, DraftReading read, OptionalInt replaces, String why) {
        boolean held = read.findings().stream().anyMatch(finding -> finding.severity() == Severity.HOLD);
        Heard heard = Heard.typed(draft.value().strip(), context.versions());
        return new Taken(
                now(),
                visit().nextEntryNumber(),
                read.reading().orElseThrow(),
                read.remarks(),
                read.findings(),
                heard,
                held,
                replaces,
                context.by(),
                why);
    }

    private Outcome confirm(Entry entry) {
        return ledger.store(
                confirmation(entry, () -> push("the confirmation of " + name(entry), () -> unconfirmed(entry))));
    }

    private Change confirmation(Entry entry, Runnable whenStored) {
        Confirmed event = new Confirmed(now(), entry.number(), context.by());
        return new Change(event, entry.number(), "Confirmed: " + entry.reading().words() + ".", whenStored);
    }

    private Change unconfirmed(Entry entry) {
        return again(entry, false, "confirmation taken back");
    }

    private Change rejection(Entry entry, String why, String done, Runnable whenStored) {
        return new Change(new Rejected(now(), entry.number(), context.by(), why), entry.number(), done, whenStored);
    }

    /** An earlier entry's content once more, in place of whatever stands for it today. */
    private Change again(Entry content, boolean held, String why) {
        Entry standing = current(content.number());
        Taken event = copy(content, held, OptionalInt.of(standing.number()), why);
        return new Change(event, standing.number(), "Taken back.", () -> seen.add(event.entry()));
    }

    private Change restored(Entry rejected) {
        int number = ledger.latest(rejected.number());
        Taken event =
                copy(rejected, rejected.status() == EntryStatus.HELD, OptionalInt.empty(), "rejection taken back");
        return new Change(event, number, "Taken back.", () -> {
            ledger.restored(number, event.entry());
            seen.add(event.entry());
        });
    }

    private Taken copy(Entry entry, boolean held, OptionalInt replaces, String why) {
        return new Taken(
                now(),
                visit().nextEntryNumber(),
                entry.reading(),
                entry.remarks(),
                entry.findings(),
                entry.heard(),
                held,
                replaces,
                context.by(),
                why);
    }

    private boolean confirmableTogether(ReviewRow row) {
        return row.state() == RowState.OPEN && !row.drafted();
    }

    private void pushConfirmations(List<Supplier<Change>> undo) {
        if (!undo.isEmpty()) {
            undoable.push(new UndoStep("the confirmation of " + Sentences.count(undo.size(), "reading"), undo));
        }
    }

    private void push(String words, Supplier<Change> opposite) {
        undoable.push(new UndoStep(words, new ArrayList<>(List.of(opposite))));
    }

    private Outcome report(Outcome outcome) {
        changed();
        return outcome;
    }

    private void changed() {
        List.copyOf(listeners).forEach(Runnable::run);
    }

    private OffsetDateTime now() {
        return OffsetDateTime.now(context.clock());
    }

    private Entry current(int number) {
        return visit().entry(ledger.latest(number))
                .orElseThrow(() -> new IllegalArgumentException("visit " + visit().id() + " has no entry " + number));
    }

    private Visit without(int number) {
        return visit().entry(number)
                .filter(Entry::counts)
                .map(entry -> visit().apply(new Rejected(now(), number, context.by(), "")))
                .orElse(visit());
    }

    private ReviewRow row(Entry entry) {
        return new ReviewRow(
                entry,
                state(entry),
                seen.contains(entry.number()),
                hasDraft(entry.number()),
                Histories.of(ledger.lineage(entry.number()), ledger.events()));
    }

    private RowState state(Entry entry) {
        if (unsaved().filter(unsaved -> unsaved.row() == entry.number()).isPresent()) {
            return RowState.NOT_SAVED;
        }
        return switch (entry.status()) {
            case HELD -> RowState.HELD;
            case CONFIRMED -> RowState.CONFIRMED;
            case REJECTED, SUPERSEDED -> RowState.REJECTED;
            case UNCONFIRMED -> asksForCare(entry) ? RowState.DOUBTFUL : RowState.OPEN;
        };
    }

    private static boolean asksForCare(Entry entry) {
        boolean reasonMissing = entry.reading().value() instanceof NotTested notTested
                && notTested.reason() == NotTestedReason.UNSTATED;
        return entry.doubtful() || reasonMissing;
    }

    private boolean everDoubtful(int number) {
        return ledger.lineage(number).stream().anyMatch(ReviewModel::asksForCare);
    }

    private int origin(int number) {
        return ledger.lineage(number).get(0).number();
    }

    private static String name(Entry entry) {
        return entry.reading().slot().words();
    }
}
