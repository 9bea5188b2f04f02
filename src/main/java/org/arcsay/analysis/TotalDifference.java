package org.arcsay.analysis;

import java.math.BigDecimal;
import java.math.MathContext;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.arcsay.analysis.Comparison.Yardstick;
import org.arcsay.model.Reading;

/**
 * Two complete totals compared.
 *
 * @param now the total
 * @param then the total it is compared with
 * @param change now less then in degrees
 * @param verdict whether the difference is beyond measurement error
 * @param threshold the square root of the sum of the squared figures of all parts, as errors of independent readings add;
 *     our default, because none is published for the thumb
 */
public record TotalDifference(
        Total now, Total then, BigDecimal change, Difference.Verdict verdict, Optional<BigDecimal> threshold) {

    /** Compares two totals of the same motion and mode; nothing where one is incomplete. */
    public static Optional<TotalDifference> between(Total now, Total then, Yardstick yardstick, Rater rater) {
        if (!now.motion().equals(then.motion()) || now.mode() != then.mode()) {
            throw new IllegalArgumentException("cannot compare " + now.motion().title() + ", "
                    + now.mode().word() + ", with " + then.motion().title() + ", "
                    + then.mode().word());
        }
        return now.degrees()
                .flatMap(a -> then.degrees().map(b -> of(now, then, a.subtract(b), threshold(now, yardstick, rater))));
    }

    /** Such as "12 degrees more than 93 degrees, within measurement error (20 degrees)". */
    public String words() {
        return Difference.words(
                change,
                Amount.Scale.DEGREES,
                change.signum() > 0 ? "more than" : "less than",
                then.degrees().orElseThrow().toPlainString() + " degrees",
                verdict,
                threshold);
    }

    private static TotalDifference of(Total now, Total then, BigDecimal change, Optional<BigDecimal> threshold) {
        Difference.Verdict verdict = Difference.Verdict.of(change, threshold);
        return new TotalDifference(now, then, change, verdict, threshold);
    }

    private static Optional<BigDecimal> threshold(Total total, Yardstick yardstick, Rater rater) {
        List<Optional<Threshold>> parts = Stream.concat(total.flexions().stream(), total.extensions().stream())
                .map(Reading::slot)
                .map(slot -> yardstick.between(slot, rater))
                .toList();
        if (parts.stream().anyMatch(Optional::isEmpty)) {
            return Optional.empty();
        }
        return Optional.of(parts.stream()
                .map(part -> part.orElseThrow().amount().pow(2))
                .reduce(BigDecimal.ZERO, BigDecimal::add)
                .sqrt(MathContext.DECIMAL64));
    }
}
