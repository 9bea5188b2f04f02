package org.arcsay.session;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.arcsay.model.Entry;
import org.arcsay.model.Finding;
import org.arcsay.model.Placement;
import org.arcsay.model.Reading;
import org.arcsay.model.Severity;
import org.arcsay.tables.Mark;
import org.arcsay.tables.Provenance;
import org.arcsay.validate.RuleInfo;

/**
 * Says of a reading that hand, mode or placement may have been changed before it by words that were not clear enough to act
 * on: it is held until it is answered.
 */
public final class ContextDoubt {
    /** What the documentation says about it, as about the rules. */
    public static final RuleInfo INFO = new RuleInfo(
            Question.CONTEXT,
            List.of(Severity.HOLD),
            "Words before it may have named another hand, mode or placement, but were not clear enough to act on, and nothing"
                    + " said since has settled it.",
            "Who did not notice that such words were refused goes on, and every reading would go to the wrong hand. Naming hand,"
                    + " mode or placement clearly, or affirming the reading, ends the doubt.",
            new Provenance(Mark.OUR_DEFAULT, "seen in loud talk, see decisions/0017-unclear-hand.md"));

    private ContextDoubt() {}

    /**
     * @param candidate the reading as it would be stored
     * @param context what holds
     * @param other what may have been meant instead
     * @return empty where the reading does not depend on what is unclear
     */
    static Optional<Finding> finding(Reading candidate, Context context, Context other) {
        List<String> unclear = unclear(candidate, context, other);
        if (unclear.isEmpty()) {
            return Optional.empty();
        }
        String sentence = "Before " + candidate.words() + ", " + String.join(" and ", unclear)
                + " may have been said, but not clearly; say yes if the reading is right, or correction "
                + unclear.get(0) + ".";
        return Optional.of(new Finding(Question.CONTEXT, Severity.HOLD, sentence, List.of()));
    }

    /** Whether an entry is held for this, whatever else is asked about it: then its hand and mode must be affirmed as well. */
    public static boolean isOn(Entry entry) {
        return entry.findings().stream().anyMatch(finding -> finding.rule().equals(Question.CONTEXT));
    }

    private static List<String> unclear(Reading candidate, Context context, Context other) {
        List<String> unclear = new ArrayList<>();
        other.side()
                .filter(side ->
                        !context.side().equals(other.side()) && context.side().equals(Optional.of(candidate.side())))
                .ifPresent(side -> unclear.add(side.word() + " hand"));
        if (other.mode() != context.mode() && candidate.mode() == context.mode()) {
            unclear.add(other.mode().word());
        }
        Placement placement = candidate.placement();
        if (other.placement() != context.placement()
                && placement == context.placement()
                && placement != Placement.UNSTATED) {
            unclear.add(other.placement().word() + " placement");
        }
        return unclear;
    }
}
