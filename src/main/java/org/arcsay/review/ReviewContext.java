package org.arcsay.review;

import java.time.Clock;
import java.util.List;
import java.util.Optional;
import org.arcsay.model.ClinicSettings;
import org.arcsay.model.Measure;
import org.arcsay.model.Versions;

/**
 * What a review needs to know beside the visit.
 *
 * @param clock gives the time, with its zone, that is written beside every change
 * @param by role or initials of the reviewer, written beside every change
 * @param versions the grammar and rules in force; the model is "none" for typed entries
 * @param settings the clinic's unit and sign convention, used to read typed values
 * @param report makes the report of the visit, where there is one to be had
 * @param measures what the reviewer can choose from, in the order in which it is offered
 */
public record ReviewContext(
        Clock clock,
        String by,
        Versions versions,
        ClinicSettings settings,
        Optional<VisitReport> report,
        List<Measure> measures) {
    public ReviewContext {
        measures = List.copyOf(measures);
    }
}
