package org.arcsay.review;

import java.util.List;
import org.arcsay.model.PatientCode;
import org.arcsay.model.Visit;

/** What the start screen asks for; called by the thread of the screen. */
public interface HomeActions {
    /** Visits begun last, newest first. */
    List<Visit> recent() throws HomeException;

    /** Whether the patient has a visit in the records. */
    boolean knows(PatientCode patient) throws HomeException;

    /** Opens the review of a visit. */
    ReviewModel review(long visit) throws HomeException;

    /** Begins a visit and starts to listen. */
    MeasuringModel measure(PatientCode patient) throws HomeException;
}
