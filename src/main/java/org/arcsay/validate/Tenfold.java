package org.arcsay.validate;

import java.math.BigDecimal;
import java.util.List;
import java.util.Optional;
import org.arcsay.model.Distance;
import org.arcsay.model.Finding;
import org.arcsay.model.Severity;
import org.arcsay.model.Value;
import org.arcsay.validate.TipGaps.TipGap;

/** A gap about ten times, or a tenth of, its neighbours in the opposition series. */
final class Tenfold implements Rule {
    private static final BigDecimal LARGEST = BigDecimal.valueOf(999);

    private final RuleInfo info;
    private final BigDecimal low;
    private final BigDecimal high;

    Tenfold(Thresholds thresholds) {
        this.low = thresholds.number("tenfold-low");
        this.high = thresholds.number("tenfold-high");
        this.info = new RuleInfo(
                "series.tenfold",
                List.of(Severity.ASK),
                "An opposition gap is " + low.toPlainString() + " to " + high.toPlainString()
                        + " times as large, or as small, as the measured neighbours on both sides.",
                "Thirty-eight millimetres and three point eight centimetres are the same, so a slip of the decimal point or"
                        + " of the unit is likely.",
                thresholds.provenance("tenfold-low"));
    }

    @Override
    public RuleInfo info() {
        return info;
    }

    @Override
    public List<Finding> judge(Case judged) {
        return TipGaps.of(judged.reading())
                .filter(gap -> gap.millimetres().signum() > 0)
                .flatMap(gap -> finding(gap, TipGaps.neighbours(gap, TipGaps.others(judged))))
                .map(List::of)
                .orElse(List.of());
    }

    private Optional<Finding> finding(TipGap gap, List<TipGap> neighbours) {
        if (neighbours.isEmpty()) {
            return Optional.empty();
        }
        if (neighbours.stream().allMatch(other -> tenfold(gap, other))) {
            return slip(gap, neighbours, new BigDecimal("0.1"), "ten times");
        }
        return neighbours.stream().allMatch(other -> tenfold(other, gap))
                ? slip(gap, neighbours, BigDecimal.TEN, "a tenth of")
                : Optional.empty();
    }

    private boolean tenfold(TipGap large, TipGap small) {
        BigDecimal from = small.millimetres().multiply(low);
        BigDecimal to = small.millimetres().multiply(high);
        return large.millimetres().compareTo(from) >= 0 && large.millimetres().compareTo(to) <= 0;
    }

    private Optional<Finding> slip(TipGap gap, List<TipGap> neighbours, BigDecimal factor, String times) {
        TipGap neighbour = neighbours.get(0);
        Optional<Value> meant = times(gap.distance(), factor);
        String sentence = gap.reading().words() + " is about " + times + " the gap to "
                + neighbour.reading().measure().site().code() + " (" + neighbour.distance() + ")"
                + meant.map(value -> "; was " + value.words() + " meant?").orElse(".");
        return Optional.of(new Finding(
                info.id(),
                Severity.ASK,
                sentence,
                List.of(Numbers.distance("value", gap.distance()), Numbers.distance("neighbour", neighbour.distance())),
                meant));
    }

    private static Optional<Value> times(Distance distance, BigDecimal factor) {
        BigDecimal amount = distance.amount().multiply(factor);
        return amount.compareTo(LARGEST) > 0
                ? Optional.empty()
                : Optional.of(new Value.Gap(new Distance(amount, distance.unit())));
    }
}
