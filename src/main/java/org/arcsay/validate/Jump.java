package org.arcsay.validate;

import java.math.BigDecimal;
import java.util.List;
import java.util.Optional;
import org.arcsay.analysis.Amount;
import org.arcsay.model.Finding;
import org.arcsay.model.Reading;
import org.arcsay.model.Severity;

/** A change since the last visit far beyond measurement error. */
final class Jump implements Rule {
    private static final String THRESHOLD = "jump-factor";

    private final RuleInfo info;
    private final ErrorLimits error;
    private final BigDecimal factor;
    private final List<Rule> explanations;

    /**
     * @param explanations rules that name a likelier reason; where one of them speaks, this one is silent
     */
    Jump(ErrorLimits error, Thresholds thresholds, List<Rule> explanations) {
        this.error = error;
        this.factor = thresholds.number(THRESHOLD);
        this.explanations = List.copyOf(explanations);
        this.info = new RuleInfo(
                "history.jump",
                List.of(Severity.ASK),
                "The value differs from the last visit by more than " + factor.toPlainString()
                        + " times the MDC95 for different raters, and no other rule explains it.",
                "A change of that size is possible, above all after surgery, but a misheard number is as likely.",
                thresholds.provenance(THRESHOLD));
    }

    @Override
    public RuleInfo info() {
        return info;
    }

    @Override
    public List<Finding> judge(Case judged) {
        Reading reading = judged.reading();
        if (Amount.of(reading.value()).isEmpty() || explained(judged)) {
            return List.of();
        }
        Optional<BigDecimal> limit = error.differentRaters(reading).map(factor::multiply);
        return Known.lastVisit(judged, reading.slot())
                .filter(last ->
                        limit.isPresent() && last.distance(reading.value()).compareTo(limit.get()) > 0)
                .map(last -> List.of(finding(reading, last, limit.orElseThrow())))
                .orElse(List.of());
    }

    private boolean explained(Case judged) {
        return explanations.stream().anyMatch(rule -> !rule.judge(judged).isEmpty());
    }

    private Finding finding(Reading reading, Known last, BigDecimal limit) {
        Amount now = Amount.of(reading.value()).orElseThrow();
        String bound = now.scale().count(limit.toPlainString());
        String sentence = reading.words() + ", but at the last visit "
                + last.reading().value().words() + "; a change of more than " + bound
                + " is far beyond measurement error.";
        return new Finding(
                info.id(),
                Severity.ASK,
                sentence,
                List.of(
                        Numbers.of("now", reading.value()),
                        Numbers.of("last visit", last.reading().value()),
                        Numbers.number("limit", limit, now.scale().unit())));
    }
}
