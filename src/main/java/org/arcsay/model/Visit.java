package org.arcsay.model;

import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * One visit of one patient: its head and the state of its entries after replaying its journal.
 *
 * @param id number given by the store, 1 or more
 * @param patient the patient's code
 * @param startedAt when capture began
 * @param endedAt when capture ended, if it has
 * @param entries every entry ever taken, rejected and superseded ones too, in order of number
 */
public record Visit(
        long id, PatientCode patient, OffsetDateTime startedAt, Optional<OffsetDateTime> endedAt, List<Entry> entries) {
    public Visit {
        entries = List.copyOf(entries);
    }

    public static Visit begun(long id, PatientCode patient, OffsetDateTime startedAt) {
        return new Visit(id, patient, startedAt, Optional.empty(), List.of());
    }

    /** Entries that count as readings: held, unconfirmed and confirmed ones. */
    public List<Entry> counting() {
        return entries.stream().filter(Entry::counts).toList();
    }

    /** The entry with that number. */
    public Optional<Entry> entry(int number) {
        return number < 1 || number > entries.size() ? Optional.empty() : Optional.of(entries.get(number - 1));
    }

    public int nextEntryNumber() {
        return entries.size() + 1;
    }

    /** Whether every counting entry is confirmed and at least one is. */
    public boolean isFinal() {
        List<Entry> counting = counting();
        return !counting.isEmpty() && counting.stream().allMatch(e -> e.status() == EntryStatus.CONFIRMED);
    }

    public Visit replay(List<JournalEvent> events) {
        Visit state = this;
        for (JournalEvent event : events) {
            state = state.apply(event);
        }
        return state;
    }

    /**
     * The state after one more event.
     *
     * @throws IllegalStateException when the event does not fit this state: an unknown entry, a gap in the numbering, or a
     *     change to an entry that no longer counts
     */
    public Visit apply(JournalEvent event) {
        if (event instanceof JournalEvent.Taken taken) {
            return take(taken);
        }
        if (event instanceof JournalEvent.Remarked remarked) {
            return replace(counting(remarked.entry()).withRemark(remarked.remark()));
        }
        if (event instanceof JournalEvent.Released released) {
            Entry entry = counting(released.entry());
            return entry.status() == EntryStatus.HELD ? replace(entry.withStatus(EntryStatus.UNCONFIRMED)) : this;
        }
        if (event instanceof JournalEvent.Rejected rejected) {
            return replace(counting(rejected.entry()).withStatus(EntryStatus.REJECTED));
        }
        if (event instanceof JournalEvent.Confirmed confirmed) {
            return replace(counting(confirmed.entry()).withStatus(EntryStatus.CONFIRMED));
        }
        JournalEvent.Ended ended = (JournalEvent.Ended) event;
        return new Visit(id, patient, startedAt, Optional.of(ended.at()), entries);
    }

    private Visit take(JournalEvent.Taken taken) {
        if (taken.entry() != nextEntryNumber()) {
            throw new IllegalStateException("expected entry " + nextEntryNumber() + ", got " + taken.entry());
        }
        Visit before = this;
        if (taken.replaces().isPresent()) {
            Entry old = counting(taken.replaces().getAsInt());
            before = replace(old.withStatus(EntryStatus.SUPERSEDED));
        }
        List<Entry> more = new ArrayList<>(before.entries);
        more.add(new Entry(
                taken.entry(),
                taken.reading(),
                taken.held() ? EntryStatus.HELD : EntryStatus.UNCONFIRMED,
                taken.remarks(),
                taken.findings(),
                taken.heard(),
                taken.at(),
                taken.replaces()));
        return new Visit(id, patient, startedAt, endedAt, more);
    }

    private Entry counting(int number) {
        Entry entry =
                entry(number).orElseThrow(() -> new IllegalStateException("visit " + id + " has no entry " + number));
        if (!entry.counts()) {
            throw new IllegalStateException("entry " + number + " is already " + entry.status());
        }
        return entry;
    }

    private Visit replace(Entry entry) {
        List<Entry> changed = new ArrayList<>(entries);
        changed.set(entry.number() - 1, entry);
        return new Visit(id, patient, startedAt, endedAt, changed);
    }
}
