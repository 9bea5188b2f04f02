package org.arcsay.analysis;

import java.math.BigDecimal;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.arcsay.analysis.ErrorFigure.Confidence;
import org.arcsay.model.Reading;
import org.arcsay.model.Slot;
import org.arcsay.model.Visit;

/**
 * One slot of a visit beside the other hand and earlier visits.
 *
 * @param slot the side, measure and mode
 * @param trials what was measured now
 * @param otherHand the other hand in the same visit, if both have a number
 * @param otherHandBefore the other hand at the most recent earlier visit with a number, where this visit has none
 * @param last the most recent earlier visit with a number, if any
 * @param first the oldest visit with a number, if any
 * @param best the best of all earlier visits, if any; the most recent among equals
 */
public record Comparison(
        Slot slot,
        Trials trials,
        Optional<Difference> otherHand,
        Optional<Difference> otherHandBefore,
        Optional<Difference> last,
        Optional<Difference> first,
        Optional<Difference> best) {

    /**
     * Compares with measurement error.
     *
     * @param error the table of measurement error
     * @param rater whether earlier visits were measured by the same person; the two hands of one visit always count as such
     * @param confidence at which a change counts
     */
    public record Yardstick(MeasurementError error, Rater rater, Confidence confidence) {
        /** The shipped table, different raters, 95 %. */
        public static Yardstick cautious() {
            return new Yardstick(MeasurementError.standard(), Rater.DIFFERENT, Confidence.NINETY_FIVE);
        }

        Optional<Threshold> between(Slot slot, Rater who) {
            return error.of(slot.measure(), slot.mode(), who)
                    .map(figure -> new Threshold(figure.threshold(confidence), figure, confidence));
        }
    }

    /**
     * Compares the last reading of a slot.
     *
     * @param earlier earlier visits, oldest first
     */
    public static Comparison of(Slot slot, Visit visit, List<Visit> earlier, Yardstick yardstick) {
        Trials trials = Trials.of(visit, slot);
        List<Past> past = past(slot, earlier);
        Optional<Threshold> change = yardstick.between(slot, yardstick.rater());
        Optional<Past> other = other(slot, visit);
        return new Comparison(
                slot,
                trials,
                difference(trials, other, yardstick.between(slot, Rater.SAME)),
                difference(
                        trials, other.isPresent() ? Optional.empty() : latest(past(slot.otherSide(), earlier)), change),
                difference(trials, latest(past), change),
                difference(trials, past.stream().findFirst(), change),
                difference(trials, past.stream().reduce(Comparison::better), change));
    }

    /** Every slot of a visit that has a number, in the order in which it was first measured. */
    public static List<Comparison> all(Visit visit, List<Visit> earlier, Yardstick yardstick) {
        return visit.counting().stream()
                .map(entry -> entry.reading().slot())
                .distinct()
                .filter(slot -> Readings.last(visit, slot).isPresent())
                .map(slot -> of(slot, visit, earlier, yardstick))
                .toList();
    }

    private record Past(Reading reading, OffsetDateTime at) {
        BigDecimal merit() {
            return Merit.of(reading);
        }
    }

    private static List<Past> past(Slot slot, List<Visit> earlier) {
        List<Past> past = new ArrayList<>();
        earlier.stream().sorted(Comparator.comparing(Visit::startedAt)).forEach(visit -> Readings.last(visit, slot)
                .ifPresent(reading -> past.add(new Past(reading, visit.startedAt()))));
        return past;
    }

    private static Optional<Past> other(Slot slot, Visit visit) {
        return Readings.last(visit, slot.otherSide()).map(reading -> new Past(reading, visit.startedAt()));
    }

    private static Optional<Past> latest(List<Past> past) {
        return past.isEmpty() ? Optional.empty() : Optional.of(past.get(past.size() - 1));
    }

    private static Past better(Past older, Past newer) {
        return older.merit().compareTo(newer.merit()) > 0 ? older : newer;
    }

    private static Optional<Difference> difference(Trials now, Optional<Past> then, Optional<Threshold> threshold) {
        return now.last()
                .flatMap(
                        reading -> then.map(past -> Difference.between(reading, past.reading(), past.at(), threshold)));
    }
}
