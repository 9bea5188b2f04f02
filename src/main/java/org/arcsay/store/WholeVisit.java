package org.arcsay.store;

import java.time.OffsetDateTime;
import java.util.List;
import org.arcsay.model.JournalEvent;
import org.arcsay.model.PatientCode;
import org.arcsay.model.Visit;

/**
 * A visit with everything that happened in it, to be added to the records at once.
 *
 * @param patient the patient's code
 * @param startedAt when capture began
 * @param plan name of the measuring plan that was followed, or empty
 * @param journal every event, in order
 */
public record WholeVisit(PatientCode patient, OffsetDateTime startedAt, String plan, List<JournalEvent> journal) {
    public WholeVisit {
        journal = List.copyOf(journal);
    }

    /**
     * The state that the events lead to.
     *
     * @param id the number that the visit has or shall have
     * @throws IllegalStateException when the events contradict each other
     */
    public Visit visit(long id) {
        return Visit.begun(id, patient, startedAt).replay(journal);
    }
}
