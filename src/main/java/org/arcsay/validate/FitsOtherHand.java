package org.arcsay.validate;

import java.math.BigDecimal;
import java.util.List;
import java.util.Optional;
import org.arcsay.analysis.Amount;
import org.arcsay.model.Finding;
import org.arcsay.model.Reading;
import org.arcsay.model.Severity;
import org.arcsay.tables.Mark;
import org.arcsay.tables.Provenance;

/** A value far from the last visit of this hand and close to the last visit of the other one. */
final class FitsOtherHand implements Rule {
    private static final RuleInfo INFO = new RuleInfo(
            "side.fits-other-hand",
            List.of(Severity.ASK),
            "The value differs from the last visit of this hand by more than twice the MDC95 for different raters, and from"
                    + " the last visit of the other hand by no more than the MDC95.",
            "The side stays set until it is changed, so a reading of the other hand may have been taken under the wrong one.",
            new Provenance(Mark.OUR_DEFAULT, "the hazard of a wrong side"));

    private final ErrorLimits error;
    private final BigDecimal factor;

    FitsOtherHand(ErrorLimits error, BigDecimal factor) {
        this.error = error;
        this.factor = factor;
    }

    @Override
    public RuleInfo info() {
        return INFO;
    }

    @Override
    public List<Finding> judge(Case judged) {
        Reading reading = judged.reading();
        if (Amount.of(reading.value()).isEmpty()) {
            return List.of();
        }
        Optional<Known> own = Known.lastVisit(judged, reading.slot());
        Optional<Known> other = Known.lastVisit(judged, reading.slot().otherSide());
        return error.differentRaters(reading)
                .filter(limit ->
                        own.isPresent() && own.get().distance(reading.value()).compareTo(limit.multiply(factor)) > 0)
                .filter(limit -> other.isPresent()
                        && other.get().distance(reading.value()).compareTo(limit) <= 0)
                .map(limit -> List.of(finding(reading, own.orElseThrow(), other.orElseThrow())))
                .orElse(List.of());
    }

    private static Finding finding(Reading reading, Known own, Known other) {
        String sentence =
                reading.words() + " is far from " + own.reading().value().words() + " at the last visit and"
                        + " close to " + other.reading().value().words() + " of the "
                        + reading.side().other().word()
                        + " hand; which hand is it?";
        return new Finding(
                INFO.id(),
                Severity.ASK,
                sentence,
                List.of(
                        Numbers.of("value", reading.value()),
                        Numbers.of("this hand", own.reading().value()),
                        Numbers.of("other hand", other.reading().value())));
    }
}
