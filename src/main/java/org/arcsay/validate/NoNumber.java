package org.arcsay.validate;

import java.util.List;
import org.arcsay.model.Finding;
import org.arcsay.model.Severity;
import org.arcsay.model.Value;
import org.arcsay.tables.Mark;
import org.arcsay.tables.Provenance;

/** A reading in words only. */
final class NoNumber implements Rule {
    private static final RuleInfo INFO = new RuleInfo(
            "value.no-number",
            List.of(Severity.ASK),
            "A motion was called full or within normal limits without a number.",
            "Words cannot be totalled or compared with the next visit, and no number is made up for them.",
            new Provenance(Mark.COMMON_PRACTICE, "the number is asked for once"));

    @Override
    public RuleInfo info() {
        return INFO;
    }

    @Override
    public List<Finding> judge(Case judged) {
        if (!(judged.reading().value() instanceof Value.Unquantified said)) {
            return List.of();
        }
        String sentence = judged.reading().slot().words() + " was called "
                + said.phrase().words() + "; say the number if there is one.";
        return List.of(new Finding(INFO.id(), Severity.ASK, sentence, List.of()));
    }
}
