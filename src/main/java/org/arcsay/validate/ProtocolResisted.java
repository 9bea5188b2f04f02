package org.arcsay.validate;

import java.util.List;
import java.util.regex.Pattern;
import org.arcsay.model.Finding;
import org.arcsay.model.Remark;
import org.arcsay.model.Severity;
import org.arcsay.tables.Mark;
import org.arcsay.tables.Provenance;

/** A note that speaks of resistance although the protocol of the patient does not permit resisted motion. */
final class ProtocolResisted implements Rule {
    private static final RuleInfo INFO = new RuleInfo(
            "protocol.resisted",
            List.of(Severity.ASK),
            "A typed note of a reading speaks of resistance for a patient whose protocol does not permit resisted motion.",
            "Readings have no resisted mode, so a note is the only place where it can be said.",
            new Provenance(
                    Mark.COMMON_PRACTICE, "no resisted flexion after tendon repair unless the protocol allows it"));

    private static final Pattern RESISTANCE = Pattern.compile("\\bresist", Pattern.CASE_INSENSITIVE);

    @Override
    public RuleInfo info() {
        return INFO;
    }

    @Override
    public List<Finding> judge(Case judged) {
        boolean broken = !judged.history().protocol().resistedPermitted()
                && judged.remarks().stream().anyMatch(ProtocolResisted::resisted);
        return broken ? List.of(finding(judged)) : List.of();
    }

    private static boolean resisted(Remark remark) {
        return remark instanceof Remark.Note note
                && RESISTANCE.matcher(note.text()).find();
    }

    private static Finding finding(Case judged) {
        return new Finding(
                INFO.id(),
                Severity.ASK,
                judged.reading().words() + " has a note about resistance, which is not permitted for this patient.",
                List.of());
    }
}
