package org.arcsay.validate;

import java.util.List;
import org.arcsay.model.Entry;
import org.arcsay.model.Finding;
import org.arcsay.model.Severity;
import org.arcsay.tables.Mark;
import org.arcsay.tables.Provenance;

/** A second reading in the same place of the series. */
final class Repeat implements Rule {
    private static final RuleInfo INFO = new RuleInfo(
            "repeat.same",
            List.of(Severity.ASK),
            "The same side, motion and mode was taken before in this visit.",
            "It may replace the first, be a second trial, or belong to the other hand; only the therapist knows.",
            new Provenance(Mark.COMMON_PRACTICE, "several trials are usual and are averaged only on request"));

    @Override
    public RuleInfo info() {
        return INFO;
    }

    @Override
    public List<Finding> judge(Case judged) {
        return judged.at(judged.reading().slot())
                .filter(other -> other.number() < judged.number())
                .reduce((first, second) -> second)
                .map(before -> finding(judged, before))
                .map(List::of)
                .orElse(List.of());
    }

    private static Finding finding(Case judged, Entry before) {
        String sentence = judged.reading().slot().words() + " was already taken: "
                + before.reading().value().words() + " in entry " + before.number() + ", now "
                + judged.reading().value().words()
                + "; should it replace that one, is it a second trial, or is it the other side?";
        return new Finding(
                INFO.id(),
                Severity.ASK,
                sentence,
                List.of(new Finding.LabelledNumber("earlier entry", Integer.toString(before.number()), "")));
    }
}
