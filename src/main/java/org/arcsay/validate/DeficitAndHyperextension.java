package org.arcsay.validate;

import java.util.List;
import org.arcsay.model.Entry;
import org.arcsay.model.Finding;
import org.arcsay.model.Severity;
import org.arcsay.model.Value.Extension;
import org.arcsay.model.Value.ExtensionKind;
import org.arcsay.tables.Mark;
import org.arcsay.tables.Provenance;

/** One joint that both lacks extension and hyperextends. */
final class DeficitAndHyperextension implements Rule {
    private static final RuleInfo INFO = new RuleInfo(
            "contradiction.deficit-and-hyperextension",
            List.of(Severity.HOLD),
            "The same side, joint and mode has an extension deficit and a hyperextension in one visit.",
            "A joint stops either before or beyond neutral; the sign or the side of one reading is likely wrong.",
            new Provenance(Mark.OUR_DEFAULT, "geometry of the joint"));

    @Override
    public RuleInfo info() {
        return INFO;
    }

    @Override
    public List<Finding> judge(Case judged) {
        if (!(judged.reading().value() instanceof Extension extension)) {
            return List.of();
        }
        return judged.at(judged.reading().slot())
                .map(Entry::reading)
                .filter(other -> other.value() instanceof Extension second && opposite(extension, second))
                .map(other -> finding(judged, extension, (Extension) other.value()))
                .toList();
    }

    private static boolean opposite(Extension first, Extension second) {
        return first.beyondNeutral().signum() * second.beyondNeutral().signum() < 0;
    }

    private static Finding finding(Case judged, Extension said, Extension other) {
        boolean saidDeficit = said.kind() == ExtensionKind.DEFICIT;
        Extension deficit = saidDeficit ? said : other;
        Extension beyond = saidDeficit ? other : said;
        String sentence = judged.reading().slot().words() + " " + deficit.words() + " and also " + beyond.words()
                + "; a joint cannot do both, so say which one holds.";
        return new Finding(
                INFO.id(),
                Severity.HOLD,
                sentence,
                List.of(
                        Numbers.degrees("extension deficit", deficit.degrees()),
                        Numbers.degrees("hyperextension", beyond.degrees())));
    }
}
