package org.arcsay.validate;

import java.math.BigDecimal;
import java.util.List;
import java.util.Optional;
import org.arcsay.model.Finding;
import org.arcsay.model.Finding.LabelledNumber;
import org.arcsay.model.Reading;
import org.arcsay.model.Severity;
import org.arcsay.model.Value;
import org.arcsay.tables.Mark;
import org.arcsay.tables.Provenance;

/** A value above the limit of its measure. */
final class HighValue implements Rule {
    private static final RuleInfo INFO = new RuleInfo(
            "limit.high",
            List.of(Severity.ASK, Severity.HOLD),
            "A value is above the ask limit or the hold limit that the table of limits gives for its measure, mode and"
                    + " direction.",
            "A larger value than healthy joints show is more often misheard than true; joints differ, so it is asked and"
                    + " not refused.",
            new Provenance(Mark.OUR_DEFAULT, "table limits.tsv, each line with its reason"));

    private final Limits limits;

    HighValue(Limits limits) {
        this.limits = limits;
    }

    @Override
    public RuleInfo info() {
        return INFO;
    }

    @Override
    public List<Finding> judge(Case judged) {
        Reading reading = judged.reading();
        return limits.forReading(reading)
                .flatMap(limit -> finding(reading, limit))
                .map(List::of)
                .orElse(List.of());
    }

    private Optional<Finding> finding(Reading reading, Limit limit) {
        BigDecimal number = number(reading.value());
        if (exceeds(number, limit.hold())) {
            return Optional.of(finding(reading, limit, number, limit.hold().get(), Severity.HOLD));
        }
        if (exceeds(number, limit.ask())) {
            return Optional.of(finding(reading, limit, number, limit.ask().get(), Severity.ASK));
        }
        return Optional.empty();
    }

    private Finding finding(Reading reading, Limit limit, BigDecimal number, BigDecimal bound, Severity severity) {
        String meaning = severity == Severity.HOLD ? "above the limit for this motion, " : "unusually large, above ";
        String sentence = reading.words() + " is " + meaning + bound.toPlainString() + " " + limit.unit()
                + limit.advice().map(advice -> "; " + advice).orElse("") + ".";
        List<LabelledNumber> numbers =
                List.of(Numbers.number("value", number, limit.unit()), Numbers.number("limit", bound, limit.unit()));
        return new Finding(INFO.id(), severity, sentence, numbers, partner(reading, bound));
    }

    private Optional<Value> partner(Reading reading, BigDecimal bound) {
        return SoundAlikes.partners(reading.value()).stream()
                .filter(partner -> number(partner).compareTo(bound) <= 0)
                .findFirst();
    }

    private static boolean exceeds(BigDecimal number, Optional<BigDecimal> bound) {
        return bound.isPresent() && number.compareTo(bound.get()) > 0;
    }

    private static BigDecimal number(Value value) {
        if (value instanceof Value.Angle angle) {
            return angle.degrees();
        }
        if (value instanceof Value.Extension extension) {
            return extension.degrees();
        }
        return value instanceof Value.Gap gap
                ? gap.distance().millimetres()
                : ((Value.Span) value).distance().millimetres();
    }
}
