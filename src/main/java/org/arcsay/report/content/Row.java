package org.arcsay.report.content;

import java.util.Optional;
import java.util.stream.Stream;
import org.arcsay.analysis.Norm;
import org.arcsay.model.Entry;
import org.arcsay.model.Measure;
import org.arcsay.model.Mode;
import org.arcsay.model.Side;

/**
 * One line of the series.
 *
 * @param measure what was measured
 * @param mode active or passive
 * @param left what the left hand has
 * @param right what the right hand has
 * @param norm the value of the report's norm set, if it has one
 */
public record Row(Measure measure, Mode mode, Cell left, Cell right, Optional<Norm> norm) {
    public Cell cell(Side side) {
        return side == Side.LEFT ? left : right;
    }

    /** Entries of both hands, left first. */
    public Stream<Entry> entries() {
        return Stream.concat(left.entries().stream(), right.entries().stream());
    }

    /** Measure and mode in plain words, such as "IP flexion, active". */
    public String words() {
        return measure.words() + ", " + mode.word();
    }
}
