package org.arcsay.validate;

import java.util.List;
import java.util.Optional;
import org.arcsay.model.Dimension;
import org.arcsay.model.Finding;
import org.arcsay.model.Severity;
import org.arcsay.model.Value;
import org.arcsay.model.Value.Angle;
import org.arcsay.tables.Mark;
import org.arcsay.tables.Provenance;

/** A teen value of an angle with nothing known to compare it with. */
final class SoundAlikeUnchecked implements Rule {
    private static final RuleInfo INFO = new RuleInfo(
            "misheard.unchecked-teen",
            List.of(Severity.NOTE),
            "An angle is 13 to 19 degrees, and neither an earlier visit nor the other mode nor the other hand has a value to"
                    + " compare it with.",
            "Sixteen and sixty sound alike, and nothing else can tell them apart; look at the number that was read back.",
            new Provenance(Mark.COMMON_PRACTICE, "numbers misheard in dictation"));

    @Override
    public RuleInfo info() {
        return INFO;
    }

    @Override
    public List<Finding> judge(Case judged) {
        boolean angle = judged.reading().measure().dimension() == Dimension.ANGLE;
        if (!angle
                || !(judged.reading().value() instanceof Angle said)
                || Known.closest(judged).isPresent()) {
            return List.of();
        }
        return SoundAlikes.teenTy(said)
                .filter(partner -> ((Angle) partner).degrees().compareTo(said.degrees()) > 0)
                .map(partner -> List.of(finding(judged, partner)))
                .orElse(List.of());
    }

    private static Finding finding(Case judged, Value partner) {
        String sentence = judged.reading().words() + " sounds like " + partner.words()
                + ", and there is no earlier value to compare it with; check the number that was read back.";
        return new Finding(
                INFO.id(),
                Severity.NOTE,
                sentence,
                List.of(Numbers.of("value", judged.reading().value()), Numbers.of("sounds like", partner)),
                Optional.of(partner));
    }
}
