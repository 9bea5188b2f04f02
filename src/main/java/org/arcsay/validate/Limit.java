package org.arcsay.validate;

import java.math.BigDecimal;
import java.util.Locale;
import java.util.Optional;
import org.arcsay.model.Reading;
import org.arcsay.model.Value;
import org.arcsay.tables.MeasurePattern;
import org.arcsay.tables.Provenance;
import org.arcsay.tables.Row;

/**
 * One line of the table of limits.
 *
 * @param pattern the measures and the mode it is about
 * @param kind which direction or kind of value it limits
 * @param ask above this the therapist is asked once, if set
 * @param hold above this the entry is held, if set
 * @param unit "degrees" or "mm"
 * @param advice what to look at, if there is something to say
 * @param provenance where the numbers come from
 */
public record Limit(
        MeasurePattern pattern,
        Kind kind,
        Optional<BigDecimal> ask,
        Optional<BigDecimal> hold,
        String unit,
        Optional<String> advice,
        Provenance provenance) {
    /** What a limited number means. */
    public enum Kind {
        VALUE,
        DEFICIT,
        HYPEREXTENSION;

        static Optional<Kind> of(Value value) {
            if (value instanceof Value.Extension extension) {
                return switch (extension.kind()) {
                    case DEFICIT -> Optional.of(DEFICIT);
                    case NEUTRAL -> Optional.empty();
                    case HYPEREXTENSION -> Optional.of(HYPEREXTENSION);
                };
            }
            boolean measured =
                    value instanceof Value.Angle || value instanceof Value.Gap || value instanceof Value.Span;
            return measured ? Optional.of(VALUE) : Optional.empty();
        }
    }

    static Limit read(Row row) {
        Limit limit = new Limit(
                MeasurePattern.read(row),
                Kind.valueOf(row.text("kind").toUpperCase(Locale.ROOT)),
                row.optionalNumber("ask"),
                row.optionalNumber("hold"),
                row.text("unit"),
                row.optional("advice"),
                row.provenance());
        limit.requireOrder();
        return limit;
    }

    boolean limits(Reading reading) {
        return Kind.of(reading.value()).filter(kind::equals).isPresent();
    }

    private void requireOrder() {
        if (ask.isPresent() && hold.isPresent() && ask.get().compareTo(hold.get()) > 0) {
            throw new IllegalArgumentException("'ask' must not be above 'hold'");
        }
    }
}
