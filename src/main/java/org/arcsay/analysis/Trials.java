package org.arcsay.analysis;

import java.math.BigDecimal;
import java.math.MathContext;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.arcsay.model.Dimension;
import org.arcsay.model.Reading;
import org.arcsay.model.Slot;
import org.arcsay.model.Visit;

/**
 * All readings of one slot in one visit that carry a number, in order. Without a request for the mean, the last one stands
 * for the visit.
 *
 * @param slot the side, measure and mode
 * @param readings the trials
 */
public record Trials(Slot slot, List<Reading> readings) {
    public Trials {
        readings = List.copyOf(readings);
    }

    public static Trials of(Visit visit, Slot slot) {
        return new Trials(
                slot,
                Readings.all(visit, slot).stream()
                        .filter(reading -> Amount.of(reading.value()).isPresent())
                        .toList());
    }

    public int count() {
        return readings.size();
    }

    public Optional<Reading> last() {
        return readings.isEmpty() ? Optional.empty() : Optional.of(readings.get(readings.size() - 1));
    }

    /** The mean on the scale of {@link Amount}, to 16 digits; never rounded to a reading. */
    public Optional<Amount> mean() {
        return amounts()
                .findFirst()
                .map(first -> new Amount(
                        numbers()
                                .reduce(BigDecimal.ZERO, BigDecimal::add)
                                .divide(BigDecimal.valueOf(count()), MathContext.DECIMAL64),
                        first.scale()));
    }

    /** Largest less smallest. */
    public Optional<Amount> range() {
        return amounts()
                .findFirst()
                .map(first -> new Amount(
                        numbers()
                                .max(BigDecimal::compareTo)
                                .orElseThrow()
                                .subtract(numbers().min(BigDecimal::compareTo).orElseThrow()),
                        first.scale()));
    }

    /** Such as "2 trials, mean 57.5 degrees, range 5 degrees; the last one is compared". */
    public String words() {
        return count() + " trials"
                + mean().map(mean -> ", mean " + words(mean)).orElse("")
                + range().map(range -> ", range " + range.scale().count(Difference.shown(range.number())))
                        .orElse("")
                + "; the last one is compared";
    }

    /** Never with a sign: an extension is short of neutral or beyond it. */
    private String words(Amount mean) {
        String number = mean.scale().count(Difference.shown(mean.number().abs()));
        if (slot.measure().dimension() != Dimension.EXTENSION || mean.number().signum() == 0) {
            return number;
        }
        return number + (mean.number().signum() < 0 ? " short of neutral" : " beyond neutral");
    }

    private Stream<Amount> amounts() {
        return readings.stream().flatMap(reading -> Amount.of(reading.value()).stream());
    }

    private Stream<BigDecimal> numbers() {
        return amounts().map(Amount::number);
    }
}
