package org.arcsay.validate;

import java.math.BigDecimal;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.arcsay.analysis.Amount;
import org.arcsay.analysis.Readings;
import org.arcsay.model.Entry;
import org.arcsay.model.Mode;
import org.arcsay.model.Reading;
import org.arcsay.model.Slot;
import org.arcsay.model.Value;
import org.arcsay.model.Visit;

/**
 * A value that a reading may be compared with.
 *
 * @param reading the known reading
 * @param where in words, such as "at the last visit"
 */
record Known(Reading reading, String where) {
    /** The last value of a slot in earlier visits. */
    static Optional<Known> lastVisit(Case judged, Slot slot) {
        return newestFirst(judged.history().earlier())
                .flatMap(visit -> Readings.last(visit, slot).stream())
                .findFirst()
                .map(reading -> new Known(reading, "at the last visit"));
    }

    /** The closest known value: the last visit, else the other mode, else the other hand in this visit. */
    static Optional<Known> closest(Case judged) {
        Slot slot = judged.reading().slot();
        Slot otherMode = new Slot(slot.side(), slot.measure(), slot.mode() == Mode.ACTIVE ? Mode.PASSIVE : Mode.ACTIVE);
        return lastVisit(judged, slot)
                .or(() -> thisVisit(judged, otherMode, otherMode.mode().word() + " in this visit"))
                .or(() -> thisVisit(judged, slot.otherSide(), "on the other hand"));
    }

    /** The last value of a slot among the other entries of this visit. */
    static Optional<Known> thisVisit(Case judged, Slot slot, String where) {
        return judged.at(slot)
                .map(Entry::reading)
                .filter(reading -> Amount.of(reading.value()).isPresent())
                .reduce((first, second) -> second)
                .map(reading -> new Known(reading, where));
    }

    /** How far a value is from the known one, on one scale. */
    BigDecimal distance(Value value) {
        return Amount.of(value).orElseThrow().minus(amount()).abs();
    }

    Amount amount() {
        return Amount.of(reading.value()).orElseThrow();
    }

    private static Stream<Visit> newestFirst(List<Visit> visits) {
        return visits.stream().sorted(Comparator.comparing(Visit::startedAt).reversed());
    }
}
