package org.arcsay.analysis;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.time.OffsetDateTime;
import java.util.Optional;
import org.arcsay.model.Dimension;
import org.arcsay.model.Reading;

/**
 * A reading compared with another of the same measure and mode.
 *
 * @param now the reading
 * @param then the reading it is compared with
 * @param thenAt when the visit of the other reading began
 * @param change now less then, in degrees, millimetres or points; for extension positive towards and beyond straight
 * @param scale the unit of the change
 * @param trend which of the two is better
 * @param verdict whether the difference is beyond measurement error
 * @param threshold what it was measured against, where a figure is known
 */
public record Difference(
        Reading now,
        Reading then,
        OffsetDateTime thenAt,
        BigDecimal change,
        Amount.Scale scale,
        Trend trend,
        Verdict verdict,
        Optional<Threshold> threshold) {
    /** Which way a difference points; a description of numbers and no judgement of treatment. */
    public enum Trend {
        BETTER,
        WORSE,
        SAME,
        /** Different, and neither is better: more or less hyperextension. */
        NEITHER
    }

    /** Whether a difference counts. */
    public enum Verdict {
        BEYOND("beyond measurement error"),
        WITHIN("within measurement error"),
        UNKNOWN("measurement error not known");

        private final String words;

        Verdict(String words) {
            this.words = words;
        }

        public String words() {
            return words;
        }

        static Verdict of(BigDecimal change, Optional<BigDecimal> threshold) {
            return threshold
                    .map(limit -> change.abs().compareTo(limit) > 0 ? BEYOND : WITHIN)
                    .orElse(UNKNOWN);
        }
    }

    static Difference between(Reading now, Reading then, OffsetDateTime thenAt, Optional<Threshold> threshold) {
        Amount amount = Amount.of(now.value()).orElseThrow();
        BigDecimal change = amount.minus(Amount.of(then.value()).orElseThrow());
        return new Difference(
                now,
                then,
                thenAt,
                change,
                amount.scale(),
                Merit.trend(now, then, change),
                Verdict.of(change, threshold.map(Threshold::amount)),
                threshold);
    }

    /** Such as "10 degrees more than 65 degrees, beyond measurement error (5 degrees)". */
    public String words() {
        return words(
                change, scale, direction() + " than", then.value().words(), verdict, threshold.map(Threshold::amount));
    }

    /** The difference alone, without unit, such as "10 more", "15 straighter" or "the same". */
    public String brief() {
        return change.signum() == 0 ? "the same" : shown(change.abs()) + " " + direction();
    }

    private String direction() {
        if (now.measure().dimension() == Dimension.EXTENSION) {
            return change.signum() > 0 ? "straighter" : "less straight";
        }
        return change.signum() > 0 ? "more" : "less";
    }

    static String words(
            BigDecimal change,
            Amount.Scale scale,
            String more,
            String then,
            Verdict verdict,
            Optional<BigDecimal> threshold) {
        String difference =
                change.signum() == 0 ? "the same, " + then : scale.count(shown(change.abs())) + " " + more + " " + then;
        String limit =
                threshold.map(known -> " (" + scale.count(shown(known)) + ")").orElse("");
        return difference + ", " + verdict.words() + limit;
    }

    /** A number for showing, with at most one decimal. */
    static String shown(BigDecimal number) {
        return number.setScale(1, RoundingMode.HALF_UP).stripTrailingZeros().toPlainString();
    }
}
