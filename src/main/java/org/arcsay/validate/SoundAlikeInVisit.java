package org.arcsay.validate;

import java.util.List;
import java.util.Optional;
import org.arcsay.model.Entry;
import org.arcsay.model.Finding;
import org.arcsay.model.Severity;
import org.arcsay.model.Value;
import org.arcsay.tables.Mark;
import org.arcsay.tables.Provenance;

/** A repeated reading whose value is the teen or ty partner of the first. */
final class SoundAlikeInVisit implements Rule {
    private static final RuleInfo INFO = new RuleInfo(
            "misheard.teen-ty-repeat",
            List.of(Severity.ASK),
            "The same side, motion and mode has two values in one visit that sound alike, such as 15 and 50.",
            "Thirteen and thirty, fourteen and forty and so on to nineteen and ninety are easily heard for one another.",
            new Provenance(Mark.COMMON_PRACTICE, "numbers misheard in dictation"));

    @Override
    public RuleInfo info() {
        return INFO;
    }

    @Override
    public List<Finding> judge(Case judged) {
        return SoundAlikes.teenTy(judged.reading().value())
                .flatMap(partner -> judged.at(judged.reading().slot())
                        .map(Entry::reading)
                        .filter(other -> other.value().equals(partner))
                        .findFirst()
                        .map(other -> finding(judged, partner)))
                .map(List::of)
                .orElse(List.of());
    }

    private static Finding finding(Case judged, Value partner) {
        String sentence = judged.reading().words() + " sounds like the other value of this visit, " + partner.words()
                + "; say which of the two was meant.";
        return new Finding(
                INFO.id(),
                Severity.ASK,
                sentence,
                List.of(Numbers.of("value", judged.reading().value()), Numbers.of("sounds like", partner)),
                Optional.of(partner));
    }
}
