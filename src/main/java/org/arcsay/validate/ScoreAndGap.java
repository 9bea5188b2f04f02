package org.arcsay.validate;

import java.math.BigDecimal;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.arcsay.analysis.Opposition.Disagreement;
import org.arcsay.model.Entry;
import org.arcsay.model.Finding;
import org.arcsay.model.Reading;
import org.arcsay.model.Severity;
import org.arcsay.model.Value;
import org.arcsay.tables.Mark;
import org.arcsay.tables.Provenance;

/** An opposition score that says a target is reached, and a ruler that says it is not. */
final class ScoreAndGap implements Rule {
    private static final RuleInfo INFO = new RuleInfo(
            "opposition.score-and-gap",
            List.of(Severity.ASK),
            "The opposition score is at or above the stage of a target to which a gap was measured on the same hand in the"
                    + " same mode.",
            "A score counts only if the stages before it are possible; a tip may still reach a later target past a missed"
                    + " one, so it is asked.",
            new Provenance(
                    Mark.SEEN, "Kapandji AI, Ann Chir Main 1986;5(1):67-73, stages in the table opposition.tsv"));

    @Override
    public RuleInfo info() {
        return INFO;
    }

    @Override
    public List<Finding> judge(Case judged) {
        Reading reading = judged.reading();
        return judged.others().stream()
                .map(Entry::reading)
                .filter(other -> other.side() == reading.side() && other.mode() == reading.mode())
                .flatMap(other ->
                        Stream.concat(disagreement(reading, other).stream(), disagreement(other, reading).stream()))
                .map(disagreement -> finding(reading, disagreement))
                .toList();
    }

    private static Optional<Disagreement> disagreement(Reading score, Reading gap) {
        return score.value() instanceof Value.Score points && gap.value() instanceof Value.Gap open
                ? Disagreement.between(gap.measure().site(), points.points(), open.distance())
                : Optional.empty();
    }

    private static Finding finding(Reading reading, Disagreement disagreement) {
        return new Finding(
                INFO.id(),
                Severity.ASK,
                reading.words() + ": " + disagreement.words() + "; check both.",
                List.of(
                        Numbers.number("score", BigDecimal.valueOf(disagreement.score()), ""),
                        Numbers.number("stage", BigDecimal.valueOf(disagreement.stage()), ""),
                        Numbers.distance("gap", disagreement.gap())));
    }
}
