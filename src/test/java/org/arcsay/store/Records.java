package org.arcsay.store;

import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.List;
import org.arcsay.model.JournalEvent;
import org.arcsay.model.PatientCode;
import org.arcsay.model.Visit;
import org.arcsay.session.Journal;

/** For one thread. A visit filled with generated events, as the model alone and as the store sees it. */
final class Records {
    static final PatientCode PATIENT = new PatientCode("P-017");
    static final OffsetDateTime START = OffsetDateTime.parse("2026-03-02T08:59:30.000000001+01:00");

    private final JournalGenerator generator;
    private final List<JournalEvent> written = new ArrayList<>();
    private Visit state;

    private Records(Visit begun, long seed) {
        state = begun;
        generator = new JournalGenerator(seed);
    }

    /** Begins a visit of {@link #PATIENT} and appends that many generated events. */
    static Records fill(VisitStore store, long seed, int events) throws Exception {
        Records records = new Records(store.begin(PATIENT, START, "thumb"), seed);
        records.append(store, events);
        return records;
    }

    /** The visit with that number as the first events from that seed make it, without any store. */
    static Records expected(long visit, long seed, int events) {
        Records records = new Records(Visit.begun(visit, PATIENT, START), seed);
        for (int i = 0; i < events; i++) {
            records.accept(records.next());
        }
        return records;
    }

    void append(VisitStore store, int events) throws Exception {
        Journal journal = store.journal(state.id());
        for (int i = 0; i < events; i++) {
            JournalEvent event = next();
            journal.append(event);
            accept(event);
        }
    }

    private JournalEvent next() {
        return generator.next(state);
    }

    private void accept(JournalEvent event) {
        state = state.apply(event);
        written.add(event);
    }

    Visit visit() {
        return state;
    }

    List<JournalEvent> written() {
        return List.copyOf(written);
    }
}
