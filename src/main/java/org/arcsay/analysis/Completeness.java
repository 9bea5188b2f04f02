package org.arcsay.analysis;

import java.util.List;
import java.util.Optional;
import org.arcsay.model.Entry;
import org.arcsay.model.EntryStatus;
import org.arcsay.model.Measure;
import org.arcsay.model.Mode;
import org.arcsay.model.Reading;
import org.arcsay.model.Severity;
import org.arcsay.model.Side;
import org.arcsay.model.Slot;
import org.arcsay.model.Value;
import org.arcsay.model.Visit;

/**
 * What a series of one hand has and lacks, in the order of its plan.
 *
 * @param plan the series
 * @param side the hand
 * @param items every step with its state
 */
public record Completeness(SeriesPlan plan, Side side, List<Item> items) {
    public Completeness {
        items = List.copyOf(items);
    }

    /** Where a step of the series stands. */
    public enum State {
        /** Measured with a number. */
        DONE,
        /** Measured, but the entry waits for an answer. */
        HELD,
        /** Described in words only, such as "full". */
        NO_NUMBER,
        /** Deliberately not measured, with a reason. */
        NOT_TESTED,
        /** Deliberately not measured; the reason is still to be given. */
        REASON_MISSING,
        MISSING
    }

    /**
     * One step.
     *
     * @param step the step of the plan
     * @param slot the step on this hand
     * @param state where it stands
     * @param entry the entry that settles it, if any
     */
    public record Item(SeriesPlan.Step step, Slot slot, State state, Optional<Entry> entry) {
        /** Whether the series waits for this step: a required one that is missing or without its reason or number. */
        public boolean open() {
            boolean settled = state == State.DONE || state == State.NOT_TESTED;
            return !settled && !(step.optional() && state == State.MISSING);
        }

        /** Whether something unusual about the entry waits to be confirmed. */
        public boolean doubtful() {
            return entry.filter(taken -> taken.status() == EntryStatus.UNCONFIRMED)
                    .filter(taken -> taken.findings().stream().anyMatch(finding -> finding.severity() != Severity.NOTE))
                    .isPresent();
        }

        /** Such as "right IP flexion, active: not tested: pain". */
        public String words() {
            return entry.map(taken -> taken.reading().words()).orElse(slot.words() + ": missing")
                    + (state == State.DONE && doubtful() ? ", to be looked at" : "")
                    + (state == State.HELD ? ", waits for an answer" : "")
                    + (state == State.REASON_MISSING ? ", reason missing" : "");
        }
    }

    public static Completeness of(SeriesPlan plan, Visit visit, Side side) {
        return new Completeness(
                plan,
                side,
                plan.steps().stream().map(step -> item(step, visit, side)).toList());
    }

    /** Steps measured with a number. */
    public List<Item> done() {
        return in(State.DONE);
    }

    /** Steps that nobody has measured or excused yet, optional ones too. */
    public List<Item> missing() {
        return in(State.MISSING);
    }

    /** Steps with a reason why they were not measured. */
    public List<Item> notTested() {
        return in(State.NOT_TESTED);
    }

    /** Steps that the series waits for. */
    public List<Item> open() {
        return items.stream().filter(Item::open).toList();
    }

    public boolean complete() {
        return open().isEmpty();
    }

    /** The first required step that is missing. */
    public Optional<Slot> next() {
        return missing().stream().filter(Item::open).map(Item::slot).findFirst();
    }

    /** The first required step that is missing after a measure, beginning again from the top at the end of the plan. */
    public Optional<Slot> nextAfter(Measure measure, Mode mode) {
        boolean passed = false;
        for (Item item : items) {
            if (passed && item.state() == State.MISSING && item.open()) {
                return Optional.of(item.slot());
            }
            passed |= item.slot().measure().equals(measure) && item.slot().mode() == mode;
        }
        return next();
    }

    /** Required steps that are settled, for a display such as "7 of 12". */
    public long settled() {
        return required()
                - items.stream()
                        .filter(item -> !item.step().optional() && item.open())
                        .count();
    }

    /** How many steps are required. */
    public long required() {
        return items.stream().filter(item -> !item.step().optional()).count();
    }

    private List<Item> in(State state) {
        return items.stream().filter(item -> item.state() == state).toList();
    }

    private static Item item(SeriesPlan.Step step, Visit visit, Side side) {
        Slot slot = step.on(side);
        Optional<Entry> best = visit.counting().stream()
                .filter(entry -> entry.reading().slot().equals(slot))
                .reduce(Completeness::moreTelling);
        return new Item(step, slot, best.map(Completeness::state).orElse(State.MISSING), best);
    }

    /** The entry that settles the slot better; the later one among equals. */
    private static Entry moreTelling(Entry first, Entry second) {
        return state(first).ordinal() < state(second).ordinal() ? first : second;
    }

    private static State state(Entry entry) {
        Reading reading = entry.reading();
        if (entry.status() == EntryStatus.HELD) {
            return State.HELD;
        }
        if (reading.value() instanceof Value.NotTested untested) {
            return untested.reason() == Value.NotTestedReason.UNSTATED ? State.REASON_MISSING : State.NOT_TESTED;
        }
        return reading.value() instanceof Value.Unquantified ? State.NO_NUMBER : State.DONE;
    }
}
