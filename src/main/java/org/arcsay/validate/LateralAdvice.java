package org.arcsay.validate;

import java.math.BigDecimal;
import java.util.List;
import java.util.Optional;
import org.arcsay.analysis.Readings;
import org.arcsay.model.Finding;
import org.arcsay.model.Placement;
import org.arcsay.model.Severity;
import org.arcsay.model.Value;
import org.arcsay.model.Value.Extension;
import org.arcsay.model.Value.ExtensionKind;

/** A first large hyperextension that was not measured from the side. */
final class LateralAdvice implements Rule {
    private static final String THRESHOLD = "lateral-advice";

    private final RuleInfo info;
    private final BigDecimal limit;

    LateralAdvice(Thresholds thresholds) {
        this.limit = thresholds.number(THRESHOLD);
        this.info = new RuleInfo(
                "placement.hyperextension",
                List.of(Severity.NOTE),
                "A hyperextension is above " + limit.toPlainString()
                        + " degrees for the first time, and lateral placement was not said.",
                "A dorsal arm can rest on swelling, the nail or a prominent bone and read too much or too little; this is"
                        + " advice and no verdict.",
                thresholds.provenance(THRESHOLD));
    }

    @Override
    public RuleInfo info() {
        return info;
    }

    @Override
    public List<Finding> judge(Case judged) {
        boolean speaks = judged.reading().placement() != Placement.LATERAL
                && large(judged.reading().value()).isPresent()
                && !seenBefore(judged);
        return speaks ? List.of(finding(judged)) : List.of();
    }

    private boolean seenBefore(Case judged) {
        return judged.history().earlier().stream()
                .flatMap(visit -> Readings.all(visit, judged.reading().slot()).stream())
                .anyMatch(reading -> large(reading.value()).isPresent());
    }

    private Optional<Extension> large(Value value) {
        return value instanceof Extension extension
                        && extension.kind() == ExtensionKind.HYPEREXTENSION
                        && extension.degrees().compareTo(limit) > 0
                ? Optional.of(extension)
                : Optional.empty();
    }

    private Finding finding(Case judged) {
        String sentence = judged.reading().words() + " is a first hyperextension above " + limit.toPlainString()
                + " degrees; lateral placement can confirm it.";
        return new Finding(
                info.id(),
                Severity.NOTE,
                sentence,
                List.of(Numbers.of("value", judged.reading().value()), Numbers.degrees("limit", limit)));
    }
}
