package org.arcsay.validate;

import java.time.OffsetDateTime;
import java.util.Collection;
import java.util.Comparator;
import java.util.List;
import org.arcsay.model.PatientProtocol;
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

    /** What the patient's visits before this one tell; a visit imported later counts by its own time. */
    public static History before(Visit visit, Collection<Visit> all) {
        return of(all.stream()
                .filter(other -> other.startedAt().isBefore(visit.startedAt()))
                .sorted(Comparator.comparing(Visit::startedAt, OffsetDateTime.timeLineOrder()))
                .toList());
    }

    public History with(PatientProtocol other) {
        return new History(earlier, other);
    }
}
