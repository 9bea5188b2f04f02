package org.arcsay.validate;

import java.math.BigDecimal;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.arcsay.model.Entry;
import org.arcsay.model.Finding;
import org.arcsay.model.Motion;
import org.arcsay.model.Reading;
import org.arcsay.model.Severity;
import org.arcsay.model.Value;
import org.arcsay.tables.Mark;
import org.arcsay.tables.Provenance;

/** A joint that flexes less far than its own extension deficit. */
final class FlexionBelowDeficit implements Rule {
    private static final RuleInfo INFO = new RuleInfo(
            "contradiction.flexion-below-deficit",
            List.of(Severity.HOLD),
            "Flexion is smaller than the extension deficit of the same side, joint and mode.",
            "A joint that lacks some degrees of extension never stands at fewer degrees of flexion, so one of the two is"
                    + " wrong.",
            new Provenance(Mark.OUR_DEFAULT, "geometry of the joint"));

    @Override
    public RuleInfo info() {
        return INFO;
    }

    @Override
    public List<Finding> judge(Case judged) {
        Reading reading = judged.reading();
        return switch (reading.measure().motion()) {
            case FLEXION ->
                partners(judged, Motion.EXTENSION)
                        .map(other -> finding(reading, other))
                        .flatMap(Optional::stream)
                        .toList();
            case EXTENSION ->
                partners(judged, Motion.FLEXION)
                        .map(other -> finding(other, reading))
                        .flatMap(Optional::stream)
                        .toList();
            default -> List.of();
        };
    }

    private static Stream<Reading> partners(Case judged, Motion motion) {
        return judged.sameJoint(motion).map(Entry::reading);
    }

    private static Optional<Finding> finding(Reading flexion, Reading extension) {
        if (!(flexion.value() instanceof Value.Angle angle)
                || !(extension.value() instanceof Value.Extension deficit)
                || deficit.kind() != Value.ExtensionKind.DEFICIT
                || angle.degrees().compareTo(deficit.degrees()) >= 0) {
            return Optional.empty();
        }
        return Optional.of(finding(flexion, angle.degrees(), deficit.degrees()));
    }

    private static Finding finding(Reading flexion, BigDecimal angle, BigDecimal deficit) {
        String sentence = flexion.words() + " is less than the extension deficit of " + deficit.toPlainString()
                + " degrees of the same joint; one of the two cannot be right.";
        return new Finding(
                INFO.id(),
                Severity.HOLD,
                sentence,
                List.of(Numbers.degrees("flexion", angle), Numbers.degrees("extension deficit", deficit)));
    }
}
