package org.arcsay.validate;

import java.math.BigDecimal;
import java.util.List;
import java.util.Optional;
import org.arcsay.model.Finding;
import org.arcsay.model.Severity;
import org.arcsay.model.Value;
import org.arcsay.model.Value.Extension;
import org.arcsay.model.Value.ExtensionKind;
import org.arcsay.tables.Mark;
import org.arcsay.tables.Provenance;

/** A deficit where the last visit had a hyperextension, or the other way round. */
final class SignFlip implements Rule {
    private static final RuleInfo INFO = new RuleInfo(
            "history.sign-flip",
            List.of(Severity.ASK),
            "A joint lacked extension at the last visit and hyperextends now, or the other way round, by more than the MDC95"
                    + " for one rater.",
            "Plus and minus are used in both senses, so a change of sides of neutral is more often a matter of wording.",
            new Provenance(
                    Mark.SEEN,
                    "Mulder K, Wittmeier K. Physiother Can 2009;61(4):266-267: both signs were in use for both meanings in"
                            + " one hospital"));

    private final ErrorLimits error;

    SignFlip(ErrorLimits error) {
        this.error = error;
    }

    @Override
    public RuleInfo info() {
        return INFO;
    }

    @Override
    public List<Finding> judge(Case judged) {
        if (!(judged.reading().value() instanceof Extension now)) {
            return List.of();
        }
        Optional<BigDecimal> limit = error.sameRater(judged.reading());
        return Known.lastVisit(judged, judged.reading().slot())
                .filter(last -> last.reading().value() instanceof Extension then && opposite(now, then))
                .filter(last -> limit.isEmpty() || last.distance(now).compareTo(limit.get()) > 0)
                .map(last ->
                        List.of(finding(judged, now, (Extension) last.reading().value())))
                .orElse(List.of());
    }

    private static boolean opposite(Extension now, Extension then) {
        return now.beyondNeutral().signum() * then.beyondNeutral().signum() < 0;
    }

    private static Finding finding(Case judged, Extension now, Extension then) {
        Value flipped = new Extension(
                now.kind() == ExtensionKind.DEFICIT ? ExtensionKind.HYPEREXTENSION : ExtensionKind.DEFICIT,
                now.degrees());
        String sentence = judged.reading().words() + ", but at the last visit it was on the other side of neutral: "
                + then.words() + "; say whether it lacks extension or hyperextends.";
        return new Finding(
                INFO.id(),
                Severity.ASK,
                sentence,
                List.of(Numbers.of("now", now), Numbers.of("last visit", then)),
                Optional.of(flipped));
    }
}
