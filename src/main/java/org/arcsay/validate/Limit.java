package org.arcsay.validate;

import java.math.BigDecimal;
import java.util.Arrays;
import java.util.Locale;
import java.util.Optional;
import org.arcsay.model.Mode;
import org.arcsay.model.Motion;
import org.arcsay.model.Reading;
import org.arcsay.model.Value;
import org.arcsay.tables.Provenance;
import org.arcsay.tables.Row;

/**
 * One line of the table of limits.
 *
 * @param site a site code, or "*" for every site without a line of its own
 * @param motion the motion
 * @param mode active, passive, or both when empty
 * @param kind which direction or kind of value it limits
 * @param ask above this the therapist is asked once, if set
 * @param hold above this the entry is held, if set
 * @param unit "degrees" or "mm"
 * @param advice what to look at, if there is something to say
 * @param provenance where the numbers come from
 */
public record Limit(
        String site,
        Motion motion,
        Optional<Mode> mode,
        Kind kind,
        Optional<BigDecimal> ask,
        Optional<BigDecimal> hold,
        String unit,
        Optional<String> advice,
        Provenance provenance) {
    static final String ANY_SITE = "*";

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
        String id = row.text("measure");
        int colon = id.indexOf(':');
        if (colon < 1) {
            throw new IllegalArgumentException("'" + id + "' is not SITE:MOTION");
        }
        Limit limit = new Limit(
                id.substring(0, colon),
                Motion.valueOf(id.substring(colon + 1)),
                mode(row.text("mode")),
                Kind.valueOf(row.text("kind").toUpperCase(Locale.ROOT)),
                row.optionalNumber("ask"),
                row.optionalNumber("hold"),
                row.text("unit"),
                row.optional("advice"),
                row.provenance());
        limit.requireOrder();
        return limit;
    }

    boolean covers(Reading reading) {
        return motion == reading.measure().motion()
                && (site.equals(ANY_SITE)
                        || site.equals(reading.measure().site().code()))
                && (mode.isEmpty() || mode.get() == reading.mode())
                && Kind.of(reading.value()).filter(kind::equals).isPresent();
    }

    /** How closely this line fits: a line for the site beats one for all sites, then a line for the mode beats one for both. */
    int precision() {
        return (site.equals(ANY_SITE) ? 0 : 2) + (mode.isPresent() ? 1 : 0);
    }

    private void requireOrder() {
        if (ask.isPresent() && hold.isPresent() && ask.get().compareTo(hold.get()) > 0) {
            throw new IllegalArgumentException("'ask' must not be above 'hold'");
        }
    }

    private static Optional<Mode> mode(String text) {
        if (text.equals("any")) {
            return Optional.empty();
        }
        return Optional.of(Arrays.stream(Mode.values())
                .filter(mode -> mode.word().equals(text))
                .findFirst()
                .orElseThrow(() ->
                        new IllegalArgumentException("'mode' must be active, passive or any, not '" + text + "'")));
    }
}
