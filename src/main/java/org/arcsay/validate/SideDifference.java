package org.arcsay.validate;

import java.math.BigDecimal;
import java.util.List;
import org.arcsay.model.Finding;
import org.arcsay.model.Reading;
import org.arcsay.model.Severity;
import org.arcsay.tables.Mark;
import org.arcsay.tables.Provenance;

/** Two hands that differ more than those of most healthy people. */
final class SideDifference implements Rule {
    private static final RuleInfo INFO = new RuleInfo(
            "side.difference",
            List.of(Severity.NOTE),
            "The two hands differ in this measure and mode by more than the table of side differences calls unusual, and the"
                    + " uninvolved hand is not the worse one.",
            "In an injured hand this is the finding itself, so it is only noted.",
            new Provenance(
                    Mark.OUR_DEFAULT,
                    "table side-differences.tsv, each line with its source; the MP lines were seen in theirs"));

    private final HandPair pairs;

    SideDifference(HandPair pairs) {
        this.pairs = pairs;
    }

    @Override
    public RuleInfo info() {
        return INFO;
    }

    @Override
    public List<Finding> judge(Case judged) {
        return pairs.of(judged)
                .filter(pair -> pair.difference().compareTo(pair.line().unusual()) > 0 && !pair.uninvolvedWorse())
                .map(pair -> List.of(finding(judged.reading(), pair)))
                .orElse(List.of());
    }

    private static Finding finding(Reading reading, HandPair.Pair pair) {
        boolean rare = pair.difference().compareTo(pair.line().rare()) > 0;
        BigDecimal limit = rare ? pair.line().rare() : pair.line().unusual();
        String sentence =
                reading.words() + ", other hand " + pair.other().value().words() + ": the difference is above "
                        + limit.toPlainString() + " " + pair.line().unit() + ", which about 1 healthy person in "
                        + (rare ? "100" : "20") + " exceeds.";
        return new Finding(INFO.id(), Severity.NOTE, sentence, pair.numbers(limit));
    }
}
