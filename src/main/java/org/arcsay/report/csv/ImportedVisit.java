package org.arcsay.report.csv;

import org.arcsay.model.Visit;
import org.arcsay.store.WholeVisit;

/**
 * A visit read from a file, ready to be stored.
 *
 * @param sourceId the number that the visit had where it came from; the store gives it a new one
 * @param content what happened in it; it has been replayed without a contradiction
 */
public record ImportedVisit(long sourceId, WholeVisit content) {
    /** The visit as it was where it came from. */
    public Visit visit() {
        return content.visit(sourceId);
    }
}
