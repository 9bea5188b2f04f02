package org.arcsay.validate;

import java.math.BigDecimal;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.arcsay.analysis.OppositionTargets;
import org.arcsay.model.Distance;
import org.arcsay.model.Entry;
import org.arcsay.model.Reading;
import org.arcsay.model.Value;

/** The gaps of an opposition series in the order of the targets. */
final class TipGaps {
    private TipGaps() {}

    /**
     * A gap with the place of its target.
     *
     * @param reading the reading
     * @param distance the gap as said
     * @param order the place of the target, from 0 for the nearest
     */
    record TipGap(Reading reading, Distance distance, int order) {
        BigDecimal millimetres() {
            return distance.millimetres();
        }
    }

    static Optional<TipGap> of(Reading reading) {
        return reading.value() instanceof Value.Gap gap
                ? OppositionTargets.standard()
                        .order(reading.measure().site())
                        .map(order -> new TipGap(reading, gap.distance(), order))
                : Optional.empty();
    }

    /** The other gaps of the same hand and mode. */
    static List<TipGap> others(Case judged) {
        return judged.sameSeries()
                .map(Entry::reading)
                .filter(reading -> reading.mode() == judged.reading().mode())
                .flatMap(reading -> of(reading).stream())
                .toList();
    }

    /** The closest measured targets before and after that one, leaving out gaps of 0. */
    static List<TipGap> neighbours(TipGap gap, List<TipGap> others) {
        List<TipGap> open = others.stream()
                .filter(other -> other.millimetres().signum() > 0)
                .toList();
        Optional<TipGap> before = open.stream()
                .filter(other -> other.order() < gap.order())
                .reduce((first, second) -> second.order() >= first.order() ? second : first);
        Optional<TipGap> after = open.stream()
                .filter(other -> other.order() > gap.order())
                .reduce((first, second) -> second.order() <= first.order() ? second : first);
        return Stream.concat(before.stream(), after.stream()).toList();
    }
}
