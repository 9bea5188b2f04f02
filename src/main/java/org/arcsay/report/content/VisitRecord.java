package org.arcsay.report.content;

import java.util.List;
import java.util.Optional;
import org.arcsay.model.Entry;
import org.arcsay.model.EntryStatus;
import org.arcsay.model.JournalEvent;
import org.arcsay.model.PatientProtocol;
import org.arcsay.model.Visit;

/**
 * A visit together with the journal that led to it, which knows who decided what and why.
 *
 * @param visit the state that replaying the journal gives
 * @param journal every event of the visit, in order
 * @param plan name of the series that was followed, or empty
 * @param protocol what the patient's treatment protocol allowed when the visit began
 */
public record VisitRecord(Visit visit, List<JournalEvent> journal, String plan, PatientProtocol protocol) {
    public VisitRecord {
        journal = List.copyOf(journal);
    }

    /** A visit that followed no series, of a patient without a protocol. */
    public VisitRecord(Visit visit, List<JournalEvent> journal) {
        this(visit, journal, "", PatientProtocol.none());
    }

    /** The same visit as one of a series. */
    public VisitRecord following(String series) {
        return new VisitRecord(visit, journal, series, protocol);
    }

    /** The same visit under a treatment protocol. */
    public VisitRecord under(PatientProtocol other) {
        return new VisitRecord(visit, journal, plan, other);
    }

    /**
     * The record of a visit from its head and its journal.
     *
     * @param begun the visit as it began, without entries
     * @throws IllegalStateException when the journal does not fit together
     */
    public static VisitRecord replay(Visit begun, List<JournalEvent> journal) {
        return new VisitRecord(begun.replay(journal), journal);
    }

    /** What the journal says about one entry beyond its state. */
    public EntryTrail trail(Entry entry) {
        return EntryTrail.of(journal, entry.number());
    }

    /** What the outside world should think of one entry. */
    public Standing standing(Entry entry) {
        return switch (entry.status()) {
            case HELD, UNCONFIRMED -> Standing.PRELIMINARY;
            case CONFIRMED -> correctsSomethingFinal(entry) ? Standing.AMENDED : Standing.FINAL;
            case REJECTED -> Standing.ENTERED_IN_ERROR;
            case SUPERSEDED -> Standing.REPLACED;
        };
    }

    /** The entry that this one corrects, if it corrects one. */
    public Optional<Entry> corrected(Entry entry) {
        return entry.replaces().isPresent() ? visit.entry(entry.replaces().getAsInt()) : Optional.empty();
    }

    /** The first entry of the chain of corrections that this entry ends: its lasting identity. */
    public Entry origin(Entry entry) {
        Entry first = entry;
        for (Optional<Entry> older = corrected(first); older.isPresent(); older = corrected(first)) {
            first = older.get();
        }
        return first;
    }

    /** Whether every counting entry is confirmed; only then is the whole report final. */
    public Standing standing() {
        if (!visit.isFinal()) {
            return Standing.PRELIMINARY;
        }
        boolean amended = visit.counting().stream().anyMatch(entry -> standing(entry) == Standing.AMENDED);
        return amended ? Standing.AMENDED : Standing.FINAL;
    }

    private boolean correctsSomethingFinal(Entry entry) {
        Optional<Entry> older = corrected(entry);
        return older.isPresent()
                && older.get().status() == EntryStatus.SUPERSEDED
                && (trail(older.get()).confirmed().isPresent() || correctsSomethingFinal(older.get()));
    }
}
