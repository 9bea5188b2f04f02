package org.arcsay.session;

import java.time.Clock;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalInt;
import org.arcsay.model.Entry;
import org.arcsay.model.Finding;
import org.arcsay.model.Heard;
import org.arcsay.model.JournalEvent;
import org.arcsay.model.Reading;
import org.arcsay.model.Remark;
import org.arcsay.model.Severity;
import org.arcsay.model.Visit;

/** Writes events to the journal and keeps the visit in step: only the thread that owns the session may use it. */
final class Recorder {
    private static final String BY_VOICE = "";

    private final Journal journal;
    private final Judge judge;
    private final Clock clock;
    private Visit visit;

    Recorder(Visit visit, Journal journal, Judge judge, Clock clock) {
        this.visit = visit;
        this.journal = journal;
        this.judge = judge;
        this.clock = clock;
    }

    Visit visit() {
        return visit;
    }

    /** Stores a new reading with what the rules say about it. */
    Entry take(Reading reading, Heard heard, OptionalInt replaces, List<Remark> remarks, String why)
            throws JournalException {
        List<Finding> findings = new ArrayList<>(judge.judge(reading, without(replaces)));
        boolean held = findings.stream().anyMatch(finding -> finding.severity() == Severity.HOLD);
        int number = visit.nextEntryNumber();
        append(new JournalEvent.Taken(now(), number, reading, remarks, findings, heard, held, replaces, BY_VOICE, why));
        return entry(number);
    }

    /** An entry is not judged against the one that it replaces. */
    private Visit without(OptionalInt replaced) {
        return replaced.isEmpty()
                ? visit
                : visit.apply(new JournalEvent.Rejected(now(), replaced.getAsInt(), BY_VOICE, ""));
    }

    Entry reject(int entry, String why) throws JournalException {
        append(new JournalEvent.Rejected(now(), entry, BY_VOICE, why));
        return entry(entry);
    }

    Entry release(int entry, String why) throws JournalException {
        append(new JournalEvent.Released(now(), entry, BY_VOICE, why));
        return entry(entry);
    }

    Entry remark(int entry, Remark remark) throws JournalException {
        append(new JournalEvent.Remarked(now(), entry, remark, BY_VOICE));
        return entry(entry);
    }

    void end() throws JournalException {
        append(new JournalEvent.Ended(now(), BY_VOICE));
    }

    Entry entry(int number) {
        return visit.entry(number).orElseThrow();
    }

    private void append(JournalEvent event) throws JournalException {
        Visit next = visit.apply(event);
        journal.append(event);
        visit = next;
    }

    private OffsetDateTime now() {
        return OffsetDateTime.now(clock);
    }
}
