package org.arcsay.report.csv;

import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.arcsay.model.Entry;
import org.arcsay.model.JournalEvent;
import org.arcsay.model.PatientCode;
import org.arcsay.model.Visit;
import org.arcsay.store.WholeVisit;

/** The rows of one visit while a file is read, and the journal they make. For one thread. */
final class VisitRows {
    private final Head head;
    private final List<EntryRow> entries = new ArrayList<>();
    private int last;
    private boolean afterUnreadable;

    /**
     * What every row of a visit repeats.
     *
     * @param id number of the visit in the file
     * @param patient the patient's code
     * @param startedAt when capture began
     * @param endedAt when capture ended, if it has
     * @param plan name of the series that was followed, or empty
     */
    record Head(
            long id, PatientCode patient, OffsetDateTime startedAt, Optional<OffsetDateTime> endedAt, String plan) {}

    VisitRows(Head head) {
        this.head = head;
    }

    Head head() {
        return head;
    }

    /** Adds a row, which must be the next entry of this visit. */
    void add(EntryRow row) {
        int expected = last + 1;
        last = row.taken().entry();
        if (!afterUnreadable && last != expected) {
            row.row()
                    .complain(
                            Column.ENTRY,
                            "expected entry " + expected + " of visit " + head.id() + " here, not " + last
                                    + "; entries stand in order, without a gap");
        }
        afterUnreadable = false;
        entries.add(row);
    }

    /** Passes over a row that was complained about; the number of the next one is then no complaint of its own. */
    void addUnreadable() {
        afterUnreadable = true;
    }

    /** The finished visit, or nothing and complaints at the rows that contradict each other. */
    Optional<ImportedVisit> finish() {
        Visit visit = Visit.begun(head.id(), head.patient(), head.startedAt());
        List<JournalEvent> journal = new ArrayList<>();
        List<EntryRow> undecided = new ArrayList<>();
        for (EntryRow entry : entries) {
            List<EntryRow> due =
                    undecided.stream().filter(u -> comesBefore(u, entry)).toList();
            due.forEach(d -> journal.addAll(d.decisions()));
            undecided.removeAll(due);
            journal.add(entry.taken());
            undecided.add(entry);
        }
        undecided.stream()
                .sorted(Comparator.comparing(EntryRow::settledAt, OffsetDateTime.timeLineOrder()))
                .forEach(u -> journal.addAll(u.decisions()));
        head.endedAt()
                .ifPresent(at -> journal.add(new JournalEvent.Ended(at, "import (there visit " + head.id() + ")")));
        return replays(visit, journal)
                ? Optional.of(new ImportedVisit(
                        head.id(), new WholeVisit(head.patient(), head.startedAt(), head.plan(), journal)))
                : Optional.empty();
    }

    private static boolean comesBefore(EntryRow decided, EntryRow taken) {
        boolean replaced = taken.taken().replaces().orElse(0) == decided.taken().entry();
        return replaced || !decided.settledAt().isAfter(taken.taken().at());
    }

    private boolean replays(Visit begun, List<JournalEvent> journal) {
        Visit visit;
        try {
            visit = begun.replay(journal);
        } catch (IllegalStateException e) {
            entries.get(0)
                    .row()
                    .complain("the rows of visit " + head.id() + " contradict each other: " + e.getMessage());
            return false;
        }
        boolean agrees = true;
        for (EntryRow row : entries) {
            Entry entry = visit.entries().get(row.taken().entry() - 1);
            if (entry.status() != row.status()) {
                row.row()
                        .complain(
                                Column.STATUS,
                                "says " + row.status() + ", but the other columns lead to " + entry.status());
                agrees = false;
            }
        }
        return agrees;
    }
}
