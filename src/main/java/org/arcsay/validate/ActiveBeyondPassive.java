package org.arcsay.validate;

import java.math.BigDecimal;
import java.util.List;
import java.util.Optional;
import org.arcsay.analysis.Amount;
import org.arcsay.model.Dimension;
import org.arcsay.model.Entry;
import org.arcsay.model.Finding;
import org.arcsay.model.Mode;
import org.arcsay.model.Reading;
import org.arcsay.model.Severity;

/** A joint that moves further by its own muscles than when it is moved. */
final class ActiveBeyondPassive implements Rule {
    private static final String THRESHOLD = "active-beyond-passive";

    private final RuleInfo info;
    private final BigDecimal tolerance;

    ActiveBeyondPassive(Thresholds thresholds) {
        this.tolerance = thresholds.number(THRESHOLD);
        this.info = new RuleInfo(
                "active.beyond-passive",
                List.of(Severity.ASK),
                "Active motion goes further than passive motion of the same side and measure by more than "
                        + tolerance.toPlainString()
                        + " degrees; for extension, the passive deficit is larger than the active"
                        + " one.",
                "Active motion is typically less than passive motion, so the mode or a number may be wrong.",
                thresholds.provenance(THRESHOLD));
    }

    @Override
    public RuleInfo info() {
        return info;
    }

    @Override
    public List<Finding> judge(Case judged) {
        Reading reading = judged.reading();
        if (!angular(reading) || Amount.of(reading.value()).isEmpty()) {
            return List.of();
        }
        Mode other = reading.mode() == Mode.ACTIVE ? Mode.PASSIVE : Mode.ACTIVE;
        return judged.at(reading.withMode(other).slot())
                .map(Entry::reading)
                .flatMap(found ->
                        (reading.mode() == Mode.ACTIVE ? compare(reading, found) : compare(found, reading)).stream())
                .toList();
    }

    private Optional<Finding> compare(Reading active, Reading passive) {
        Optional<Amount> most = Amount.of(passive.value());
        return Amount.of(active.value())
                .flatMap(amount -> most.filter(limit -> amount.minus(limit).compareTo(tolerance) > 0))
                .map(limit -> finding(active, passive));
    }

    private Finding finding(Reading active, Reading passive) {
        String sentence = active.words() + " goes further than passive, "
                + passive.value().words() + ", by more than " + tolerance.toPlainString()
                + " degrees; passive motion is usually at least as large.";
        return new Finding(
                info.id(),
                Severity.ASK,
                sentence,
                List.of(
                        Numbers.of("active", active.value()),
                        Numbers.of("passive", passive.value()),
                        Numbers.degrees("tolerance", tolerance)));
    }

    private static boolean angular(Reading reading) {
        Dimension dimension = reading.measure().dimension();
        return dimension == Dimension.ANGLE || dimension == Dimension.EXTENSION;
    }
}
