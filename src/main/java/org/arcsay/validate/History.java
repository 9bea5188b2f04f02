package org.arcsay.validate;

import java.util.List;
import org.arcsay.model.Visit;

/**
 * What is known of a patient before this visit.
 *
 * @param earlier earlier visits, oldest first
 * @param protocol what the treatment protocol allows
 */
public record History(List<Visit> earlier, PatientProtocol protocol) {
    public History {
        earlier = List.copyOf(earlier);
    }

    /** Nothing known. */
    public static History none() {
        return new History(List.of(), PatientProtocol.none());
    }

    public static History of(List<Visit> earlier) {
        return new History(earlier, PatientProtocol.none());
    }

    public History with(PatientProtocol other) {
        return new History(earlier, other);
    }
}
