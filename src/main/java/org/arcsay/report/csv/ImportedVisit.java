package org.arcsay.report.csv;

import java.time.OffsetDateTime;
import java.util.List;
import org.arcsay.model.JournalEvent;
import org.arcsay.model.PatientCode;
import org.arcsay.model.Visit;

/**
 * A visit read from a file, ready to be stored by appending its events in order.
 *
 * @param sourceId the number that the visit had where it came from; the store gives it a new one
 * @param patient the patient's code
 * @param startedAt when capture began
 * @param journal events that lead to the visit's state; they have been replayed without a contradiction
 */
public record ImportedVisit(long sourceId, PatientCode patient, OffsetDateTime startedAt, List<JournalEvent> journal) {
    public ImportedVisit {
        journal = List.copyOf(journal);
    }

    /** The visit as it was where it came from. */
    public Visit visit() {
        return Visit.begun(sourceId, patient, startedAt).replay(journal);
    }
}
