package org.arcsay.validate;

import java.math.BigDecimal;
import java.util.List;
import java.util.Optional;
import org.arcsay.analysis.Amount;
import org.arcsay.analysis.Merit;
import org.arcsay.model.Finding.LabelledNumber;
import org.arcsay.model.Reading;
import org.arcsay.model.Side;

/** Finds the reading of the other hand that a reading is compared with. */
record HandPair(SideDifferences table) {
    /**
     * The same measure on both hands.
     *
     * @param reading the judged one
     * @param other the last one of the other hand
     * @param line what difference is usual
     * @param involved the hand under treatment, if known
     */
    record Pair(Reading reading, Reading other, SideDifferences.Line line, Optional<Side> involved) {
        BigDecimal difference() {
            return Amount.of(reading.value())
                    .orElseThrow()
                    .minus(Amount.of(other.value()).orElseThrow())
                    .abs();
        }

        boolean involvedIsThis() {
            return involved.filter(reading.side()::equals).isPresent();
        }

        /** Whether the involved hand is known and better by more than is usual. */
        boolean uninvolvedWorse() {
            if (involved.isEmpty()) {
                return false;
            }
            Reading treated = involvedIsThis() ? reading : other;
            Reading untreated = involvedIsThis() ? other : reading;
            return Merit.of(treated).subtract(Merit.of(untreated)).compareTo(line.unusual()) > 0;
        }

        List<LabelledNumber> numbers(BigDecimal limit) {
            return List.of(
                    Numbers.of("this hand", reading.value()),
                    Numbers.of("other hand", other.value()),
                    Numbers.number("limit", limit, line.unit()));
        }
    }

    Optional<Pair> of(Case judged) {
        Reading reading = judged.reading();
        if (Amount.of(reading.value()).isEmpty()) {
            return Optional.empty();
        }
        return Known.thisVisit(judged, reading.slot().otherSide(), "on the other hand")
                .flatMap(other -> table.forReading(reading)
                        .map(line -> new Pair(
                                reading,
                                other.reading(),
                                line,
                                judged.history().protocol().involvedSide())));
    }
}
