package org.arcsay.analysis;

import java.util.List;
import java.util.Optional;
import org.arcsay.model.Entry;
import org.arcsay.model.EntryStatus;
import org.arcsay.model.Reading;
import org.arcsay.model.Slot;
import org.arcsay.model.Visit;

/** Which readings of a visit are computed with: those that count and are not held back by an open question. */
public final class Readings {
    private Readings() {}

    /** All of a slot, in the order in which they were taken. */
    public static List<Reading> all(Visit visit, Slot slot) {
        return visit.counting().stream()
                .filter(entry -> entry.status() != EntryStatus.HELD)
                .map(Entry::reading)
                .filter(reading -> reading.slot().equals(slot))
                .toList();
    }

    /** The last reading of a slot that carries a number. */
    public static Optional<Reading> last(Visit visit, Slot slot) {
        return all(visit, slot).stream()
                .filter(reading -> Amount.of(reading.value()).isPresent())
                .reduce((first, second) -> second);
    }
}
