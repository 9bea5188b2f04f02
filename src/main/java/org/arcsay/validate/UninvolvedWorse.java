package org.arcsay.validate;

import java.util.List;
import org.arcsay.model.Finding;
import org.arcsay.model.Reading;
import org.arcsay.model.Severity;
import org.arcsay.tables.Mark;
import org.arcsay.tables.Provenance;

/** The hand that is not under treatment moves less than the one that is. */
final class UninvolvedWorse implements Rule {
    private static final RuleInfo INFO = new RuleInfo(
            "side.uninvolved-worse",
            List.of(Severity.ASK),
            "The uninvolved hand is worse than the involved one by more than the table of side differences calls unusual.",
            "The two hands may have been exchanged: which hand is it?",
            new Provenance(
                    Mark.OUR_DEFAULT,
                    "table side-differences.tsv, each line with its source; the MP lines were seen in theirs"));

    private final HandPair pairs;

    UninvolvedWorse(HandPair pairs) {
        this.pairs = pairs;
    }

    @Override
    public RuleInfo info() {
        return INFO;
    }

    @Override
    public List<Finding> judge(Case judged) {
        return pairs.of(judged)
                .filter(HandPair.Pair::uninvolvedWorse)
                .map(pair -> List.of(finding(judged.reading(), pair)))
                .orElse(List.of());
    }

    private static Finding finding(Reading reading, HandPair.Pair pair) {
        String involved = pair.involvedIsThis()
                ? reading.side().word()
                : pair.other().side().word();
        String sentence = reading.words() + ", other hand "
                + pair.other().value().words() + ": the " + involved
                + " hand is under treatment and yet the better one by more than "
                + pair.line().unusual().toPlainString() + " " + pair.line().unit() + "; which hand is it?";
        return new Finding(
                INFO.id(), Severity.ASK, sentence, pair.numbers(pair.line().unusual()));
    }
}
