package org.arcsay.report;

import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.arcsay.model.PatientCode;
import org.arcsay.model.Visit;
import org.arcsay.report.content.VisitRecord;
import org.arcsay.store.StoreException;
import org.arcsay.store.VisitStore;

/** Fetches what reports are made from out of the records. */
public final class StoredVisits {
    private StoredVisits() {}

    /** Every visit of a patient with its journal, oldest first; those added later from elsewhere stand where they belong. */
    public static List<VisitRecord> of(VisitStore store, PatientCode patient) throws StoreException {
        List<VisitRecord> records = new ArrayList<>();
        for (VisitRecord record : store.visits(patient, VisitRecord::new)) {
            records.add(record.following(store.plan(record.visit().id()).orElse(""))
                    .under(store.protocol(patient, record.visit().startedAt())));
        }
        return records.stream()
                .sorted(Comparator.comparing(record -> record.visit().startedAt(), OffsetDateTime.timeLineOrder()))
                .toList();
    }

    /** The visits of a patient up to and with that one, which a report of it is made from. */
    public static List<VisitRecord> upTo(VisitStore store, Visit visit) throws StoreException {
        return of(store, visit.patient()).stream()
                .filter(record -> record.visit().id() == visit.id()
                        || record.visit().startedAt().isBefore(visit.startedAt()))
                .toList();
    }
}
