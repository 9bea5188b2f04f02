package org.arcsay.validate;

import java.util.List;
import org.arcsay.model.Finding;
import org.arcsay.model.Mode;
import org.arcsay.model.Severity;
import org.arcsay.model.Value;
import org.arcsay.tables.Mark;
import org.arcsay.tables.Provenance;

/** A passive reading although the protocol of the patient does not permit passive motion. */
final class ProtocolPassive implements Rule {
    private static final RuleInfo INFO = new RuleInfo(
            "protocol.passive",
            List.of(Severity.ASK),
            "A passive value is said for a patient whose protocol does not permit passive motion, on either hand.",
            "Either the mode was left on passive, or the protocol needs a second look.",
            new Provenance(
                    Mark.COMMON_PRACTICE, "no passive extension after tendon repair unless the protocol allows it"));

    @Override
    public RuleInfo info() {
        return INFO;
    }

    @Override
    public List<Finding> judge(Case judged) {
        boolean broken = judged.reading().mode() == Mode.PASSIVE
                && !(judged.reading().value() instanceof Value.NotTested)
                && !judged.history().protocol().passivePermitted();
        return broken ? List.of(finding(judged)) : List.of();
    }

    private static Finding finding(Case judged) {
        return new Finding(
                INFO.id(),
                Severity.ASK,
                judged.reading().words() + ", but passive motion is not permitted for this patient; was it active?",
                List.of());
    }
}
