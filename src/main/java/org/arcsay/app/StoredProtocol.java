package org.arcsay.app;

import java.time.OffsetDateTime;
import org.arcsay.model.PatientCode;
import org.arcsay.model.PatientProtocol;
import org.arcsay.review.HomeException;
import org.arcsay.review.ProtocolModel;
import org.arcsay.store.StoreException;

/** The protocols in the records, behind their screen. Any thread may use it. */
record StoredProtocol(Visits visits) implements ProtocolModel.Actions {
    @Override
    public PatientProtocol now(PatientCode patient) throws HomeException {
        try {
            return visits.store().protocol(patient, OffsetDateTime.now());
        } catch (StoreException e) {
            throw new HomeException(String.valueOf(e.getMessage()), e);
        }
    }

    @Override
    public PatientProtocol set(PatientCode patient, String statements, String by) throws HomeException {
        try {
            return visits.setProtocol(patient, statements, by);
        } catch (StoreException | IllegalArgumentException e) {
            throw new HomeException(String.valueOf(e.getMessage()), e);
        }
    }
}
