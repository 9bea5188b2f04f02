package org.arcsay.validate;

import java.util.List;
import org.arcsay.model.Finding;
import org.arcsay.model.Severity;
import org.arcsay.model.Value;
import org.arcsay.tables.Mark;
import org.arcsay.tables.Provenance;

/** Something not tested, and nobody said why. */
final class ReasonMissing implements Rule {
    private static final RuleInfo INFO = new RuleInfo(
            "reason.missing",
            List.of(Severity.ASK),
            "A motion was said to be not tested without a reason.",
            "A gap in the record needs its reason: protocol, pain, wound, pin, splint, declined or unable.",
            new Provenance(Mark.COMMON_PRACTICE, "a measurement left out is recorded with its reason"));

    @Override
    public RuleInfo info() {
        return INFO;
    }

    @Override
    public List<Finding> judge(Case judged) {
        boolean open = judged.reading().value() instanceof Value.NotTested untested
                && untested.reason() == Value.NotTestedReason.UNSTATED;
        String sentence = judged.reading().slot().words()
                + " was not tested; say why: protocol, pain, wound, pin, splint, declined or unable.";
        return open ? List.of(new Finding(INFO.id(), Severity.ASK, sentence, List.of())) : List.of();
    }
}
