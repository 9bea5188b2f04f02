package org.arcsay.validate;

import java.math.BigDecimal;
import java.util.List;
import java.util.Optional;
import org.arcsay.analysis.Amount;
import org.arcsay.model.Dimension;
import org.arcsay.model.Finding;
import org.arcsay.model.Severity;
import org.arcsay.model.Value;
import org.arcsay.tables.Mark;
import org.arcsay.tables.Provenance;

/** A value far from what is known while a value that sounds like it, or has its digits exchanged, is close. */
final class SoundAlikeFits implements Rule {
    private static final RuleInfo INFO = new RuleInfo(
            "misheard.fits-better",
            List.of(Severity.ASK),
            "The value differs from the last visit (else from the other mode, else from the other hand) by more than the"
                    + " MDC95 for different raters, and its teen or ty partner (13/30 to 19/90) or the same digits exchanged"
                    + " (57/75) does not.",
            "Such numbers are easily misheard or misread; the one that fits what is known is the likelier.",
            new Provenance(
                    Mark.COMMON_PRACTICE, "numbers misheard in dictation; a verbal order is read back digit by digit"));

    private final ErrorLimits error;

    SoundAlikeFits(ErrorLimits error) {
        this.error = error;
    }

    @Override
    public RuleInfo info() {
        return INFO;
    }

    @Override
    public List<Finding> judge(Case judged) {
        boolean comparable = Amount.of(judged.reading().value()).isPresent()
                && judged.reading().measure().dimension() != Dimension.SCORE;
        if (!comparable) {
            return List.of();
        }
        return Known.closest(judged)
                .flatMap(known -> error.differentRaters(judged.reading())
                        .flatMap(limit -> fitting(judged.reading().value(), known, limit))
                        .map(partner -> List.of(finding(judged, known, partner))))
                .orElse(List.of());
    }

    private static Optional<Value> fitting(Value value, Known known, BigDecimal limit) {
        if (known.distance(value).compareTo(limit) <= 0) {
            return Optional.empty();
        }
        return SoundAlikes.partners(value).stream()
                .filter(partner -> known.distance(partner).compareTo(limit) <= 0)
                .findFirst();
    }

    private static Finding finding(Case judged, Known known, Value partner) {
        String sentence = judged.reading().words() + " is far from "
                + known.reading().value().words() + " " + known.where() + ", and " + partner.words()
                + " would be close; say which of the two it is.";
        return new Finding(
                INFO.id(),
                Severity.ASK,
                sentence,
                List.of(
                        Numbers.of("value", judged.reading().value()),
                        Numbers.of("known", known.reading().value()),
                        Numbers.of("alternative", partner)),
                Optional.of(partner));
    }
}
