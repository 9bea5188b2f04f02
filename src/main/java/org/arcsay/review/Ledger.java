package org.arcsay.review;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import org.arcsay.model.Entry;
import org.arcsay.model.JournalEvent;
import org.arcsay.model.Visit;
import org.arcsay.session.Journal;
import org.arcsay.session.JournalException;

/** The visit as it is stored, and at most one change that waits to be stored. Used by one thread at a time. */
final class Ledger {
    private final Journal journal;
    private final List<JournalEvent> events;
    private final Map<Integer, Integer> restoredAs = new HashMap<>();
    private Visit visit;
    private Optional<Change> waiting = Optional.empty();
    private String failure = "";

    Ledger(Visit visit, List<JournalEvent> past, Journal journal) {
        this.visit = visit;
        this.events = new ArrayList<>(past);
        this.journal = journal;
    }

    Visit visit() {
        return visit;
    }

    List<JournalEvent> events() {
        return events;
    }

    Optional<Unsaved> unsaved() {
        return waiting.map(change -> new Unsaved(change.row(), change.done(), failure));
    }

    /** Stores a change at once. While one waits, no other is taken: the order of events must not change. */
    Outcome store(Change change) {
        if (waiting.isPresent()) {
            return new Outcome.Refused(
                    "An earlier change is not saved yet. Save it again or discard it first. " + failure);
        }
        return write(change);
    }

    Outcome retry() {
        return waiting.map(this::write).orElseGet(() -> new Outcome.Refused("Everything is saved."));
    }

    void discard() {
        waiting = Optional.empty();
    }

    /** Remembers that a rejected entry came back under another number. */
    void restored(int rejected, int now) {
        restoredAs.put(rejected, now);
    }

    /** The entry that stands today for what was once that number. */
    int latest(int number) {
        OptionalInt next = successor(number);
        return next.isPresent() ? latest(next.getAsInt()) : number;
    }

    /** Every entry that led to this one, earliest first, itself last. */
    List<Entry> lineage(int number) {
        List<Entry> line = new ArrayList<>();
        OptionalInt at = OptionalInt.of(number);
        while (at.isPresent()) {
            Entry entry = visit.entry(at.getAsInt()).orElseThrow();
            line.add(0, entry);
            at = predecessor(entry);
        }
        return line;
    }

    private OptionalInt predecessor(Entry entry) {
        if (entry.replaces().isPresent()) {
            return entry.replaces();
        }
        return restoredAs.entrySet().stream()
                .filter(pair -> pair.getValue() == entry.number())
                .mapToInt(Map.Entry::getKey)
                .findFirst();
    }

    private OptionalInt successor(int number) {
        Integer restored = restoredAs.get(number);
        if (restored != null) {
            return OptionalInt.of(restored);
        }
        return visit.entries().stream()
                .filter(entry -> entry.replaces().orElse(0) == number)
                .mapToInt(Entry::number)
                .findFirst();
    }

    private Outcome write(Change change) {
        Visit next = visit.apply(change.event());
        try {
            journal.append(change.event());
        } catch (JournalException failed) {
            waiting = Optional.of(change);
            failure = String.valueOf(failed.getMessage());
            return new Outcome.NotSaved(failure);
        }
        waiting = Optional.empty();
        visit = next;
        events.add(change.event());
        change.whenStored().run();
        return new Outcome.Done(change.done());
    }
}
