package org.arcsay.validate;

import java.util.List;
import org.arcsay.analysis.Amount;
import org.arcsay.model.Finding;
import org.arcsay.model.PatientProtocol;
import org.arcsay.model.PatientProtocol.RangeLimit;
import org.arcsay.model.Reading;
import org.arcsay.model.Severity;
import org.arcsay.tables.Mark;
import org.arcsay.tables.Provenance;

/** A joint that was moved further than the protocol of the patient allows. */
final class ProtocolRange implements Rule {
    private static final RuleInfo INFO = new RuleInfo(
            "protocol.range",
            List.of(Severity.ASK),
            "A value goes beyond a range limit of the patient's protocol on the involved hand, or on either hand while it is"
                    + " not known which is involved.",
            "Either the number is wrong, or the limit was passed and belongs in the record.",
            new Provenance(Mark.COMMON_PRACTICE, "limits are set for each patient by the treatment protocol"));

    @Override
    public RuleInfo info() {
        return INFO;
    }

    @Override
    public List<Finding> judge(Case judged) {
        PatientProtocol protocol = judged.history().protocol();
        if (!protocol.concerns(judged.reading().side())) {
            return List.of();
        }
        return protocol.ranges().stream()
                .filter(limit -> limit.covers(judged.reading()) && beyond(judged.reading(), limit))
                .map(limit -> finding(judged.reading(), limit))
                .toList();
    }

    private static boolean beyond(Reading reading, RangeLimit limit) {
        Amount furthest = Amount.of(limit.furthest()).orElseThrow();
        return Amount.of(reading.value())
                .filter(amount -> amount.minus(furthest).signum() > 0)
                .isPresent();
    }

    private static Finding finding(Reading reading, RangeLimit limit) {
        return new Finding(
                INFO.id(),
                Severity.ASK,
                reading.words() + " goes beyond the limit of this patient's protocol: "
                        + limit.furthest().words() + ".",
                List.of(Numbers.of("value", reading.value()), Numbers.of("limit", limit.furthest())));
    }
}
