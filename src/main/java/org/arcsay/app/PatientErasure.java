package org.arcsay.app;

import java.io.IOException;
import org.arcsay.model.PatientCode;
import org.arcsay.model.Visit;
import org.arcsay.review.FileDrafts;
import org.arcsay.store.Erasure;
import org.arcsay.store.KeptSound;
import org.arcsay.store.StoreException;
import org.arcsay.store.VisitStore;

/**
 * Takes everything about a patient out of the data folder: sound and drafts first, then the records, so that an interruption
 * leaves the patient known and the erasure can be asked for again.
 */
public record PatientErasure(VisitStore store, KeptSound sound, FileDrafts drafts) {
    /**
     * @throws StoreException when the patient is not known or something could not be removed
     * @throws IOException when a draft could not be removed
     */
    public Erasure erase(PatientCode patient) throws StoreException, IOException {
        for (Visit visit : store.visits(patient)) {
            sound.purge(visit.id());
            drafts.forget(visit.id());
        }
        return store.erase(patient);
    }
}
