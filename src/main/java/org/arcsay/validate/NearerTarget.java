package org.arcsay.validate;

import java.math.BigDecimal;
import java.util.List;
import java.util.Optional;
import org.arcsay.model.Finding;
import org.arcsay.model.Severity;
import org.arcsay.validate.TipGaps.TipGap;

/** A gap to a farther target that is much smaller than the gap to a nearer one. */
final class NearerTarget implements Rule {
    private static final String THRESHOLD = "nearer-target";

    private final RuleInfo info;
    private final BigDecimal limit;

    NearerTarget(Thresholds thresholds) {
        this.limit = thresholds.number(THRESHOLD);
        this.info = new RuleInfo(
                "series.nearer-target",
                List.of(Severity.NOTE),
                "The gap to a farther target is smaller than the gap to a nearer one by more than "
                        + limit.toPlainString() + " mm.",
                "Gaps usually grow from the index finger to the palm; the other order is possible and worth a look.",
                thresholds.provenance(THRESHOLD));
    }

    @Override
    public RuleInfo info() {
        return info;
    }

    @Override
    public List<Finding> judge(Case judged) {
        return TipGaps.of(judged.reading())
                .flatMap(gap -> TipGaps.others(judged).stream()
                        .flatMap(other -> compare(gap, other).stream())
                        .findFirst())
                .map(List::of)
                .orElse(List.of());
    }

    private Optional<Finding> compare(TipGap gap, TipGap other) {
        if (gap.order() == other.order()) {
            return Optional.empty();
        }
        TipGap nearer = gap.order() < other.order() ? gap : other;
        TipGap farther = gap.order() < other.order() ? other : gap;
        return nearer.millimetres().subtract(farther.millimetres()).compareTo(limit) > 0
                ? Optional.of(finding(nearer, farther))
                : Optional.empty();
    }

    private Finding finding(TipGap nearer, TipGap farther) {
        String sentence = farther.reading().words() + " is more than " + limit.toPlainString()
                + " mm less than the gap to the nearer "
                + nearer.reading().measure().site().code() + " ("
                + nearer.distance() + ").";
        return new Finding(
                info.id(),
                Severity.NOTE,
                sentence,
                List.of(
                        Numbers.distance("farther target", farther.distance()),
                        Numbers.distance("nearer target", nearer.distance()),
                        Numbers.number("limit", limit, "mm")));
    }
}
