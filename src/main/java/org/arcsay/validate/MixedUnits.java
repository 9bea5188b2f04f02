package org.arcsay.validate;

import java.util.List;
import java.util.Optional;
import org.arcsay.model.Distance;
import org.arcsay.model.Entry;
import org.arcsay.model.Finding;
import org.arcsay.model.LengthUnit;
import org.arcsay.model.Severity;
import org.arcsay.model.Value;
import org.arcsay.tables.Mark;
import org.arcsay.tables.Provenance;

/** An opposition series in more than one unit of length. */
final class MixedUnits implements Rule {
    private static final RuleInfo INFO = new RuleInfo(
            "series.mixed-units",
            List.of(Severity.ASK),
            "An opposition gap is in another unit than the gaps already taken of that hand; gaps of 0 are left out.",
            "A series is measured with one ruler in one unit, so a change of unit is more often a slip of the tongue.",
            new Provenance(Mark.COMMON_PRACTICE, "one unit for the whole series of tip gaps"));

    @Override
    public RuleInfo info() {
        return INFO;
    }

    @Override
    public List<Finding> judge(Case judged) {
        return gap(judged.reading().value())
                .flatMap(said -> judged.sameSeries()
                        .map(Entry::reading)
                        .flatMap(other -> gap(other.value()).stream())
                        .filter(other -> other.unit() != said.unit())
                        .findFirst()
                        .map(other -> finding(judged, said, other)))
                .map(List::of)
                .orElse(List.of());
    }

    private static Optional<Distance> gap(Value value) {
        return value instanceof Value.Gap gap && gap.distance().amount().signum() > 0
                ? Optional.of(gap.distance())
                : Optional.empty();
    }

    private static Finding finding(Case judged, Distance said, Distance other) {
        String sentence = judged.reading().words() + " is in " + said.unit().symbol()
                + ", but this series was begun in " + other.unit().symbol() + " (" + other + "); say the unit again.";
        return new Finding(
                INFO.id(),
                Severity.ASK,
                sentence,
                List.of(Numbers.distance("value", said), Numbers.distance("other gap", other)),
                sameNumberIn(other.unit(), said));
    }

    private static Optional<Value> sameNumberIn(LengthUnit unit, Distance said) {
        return Optional.of(new Value.Gap(new Distance(said.amount(), unit)));
    }
}
