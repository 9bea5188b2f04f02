package org.arcsay.tables;

import java.util.Arrays;
import java.util.Comparator;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Stream;
import org.arcsay.model.Measure;
import org.arcsay.model.Mode;
import org.arcsay.model.Motion;

/**
 * Which measures a line of a table is about, from the columns "measure" (SITE:MOTION, or *:MOTION for every site without a
 * line of its own) and "mode" (active, passive or any).
 *
 * @param site a site code or "*"
 * @param motion the motion
 * @param mode active, passive, or both when empty
 */
public record MeasurePattern(String site, Motion motion, Optional<Mode> mode) {
    private static final String ANY_SITE = "*";

    /**
     * @throws IllegalArgumentException when a cell names no motion or mode
     */
    public static MeasurePattern read(Row row) {
        String id = row.text("measure");
        int colon = id.indexOf(':');
        if (colon < 1) {
            throw new IllegalArgumentException("'measure' must be SITE:MOTION, not '" + id + "'");
        }
        return new MeasurePattern(id.substring(0, colon), motion(id.substring(colon + 1)), mode(row.text("mode")));
    }

    /** The line that fits most closely: one for the site beats one for all sites, then one for the mode beats one for both. */
    public static <T> Optional<T> closest(
            Stream<T> lines, Function<T, MeasurePattern> pattern, Measure measure, Mode mode) {
        return lines.filter(line -> pattern.apply(line).covers(measure, mode))
                .max(Comparator.comparingInt(line -> pattern.apply(line).precision()));
    }

    boolean covers(Measure measure, Mode asked) {
        return motion == measure.motion()
                && (site.equals(ANY_SITE) || site.equals(measure.site().code()))
                && (mode.isEmpty() || mode.get() == asked);
    }

    private int precision() {
        return (site.equals(ANY_SITE) ? 0 : 2) + (mode.isPresent() ? 1 : 0);
    }

    private static Motion motion(String text) {
        return Arrays.stream(Motion.values())
                .filter(motion -> motion.name().equals(text))
                .findFirst()
                .orElseThrow(() -> new IllegalArgumentException("'" + text + "' is no motion"));
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
