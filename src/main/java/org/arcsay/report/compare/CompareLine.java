package org.arcsay.report.compare;

import java.util.Optional;
import org.arcsay.analysis.Difference;
import org.arcsay.analysis.Difference.Verdict;
import org.arcsay.analysis.Norm;
import org.arcsay.model.Side;
import org.arcsay.report.content.Brief;
import org.arcsay.report.content.Cell;
import org.arcsay.report.content.Row;

/**
 * One line of the comparison.
 *
 * @param measure measure and mode
 * @param now what was measured; "(preliminary)" behind it when not confirmed
 * @param other the other hand
 * @param beside how the hands differ
 * @param last the value of the last earlier visit
 * @param since how it changed since then
 * @param norm the value of the norm set
 */
public record CompareLine(
        String measure, String now, String other, Verdicted beside, String last, Verdicted since, String norm) {

    /**
     * A difference in words.
     *
     * @param words such as "10 more, beyond error", which is the error of measurement; "" where there is nothing to compare
     * @param counts whether it is beyond measurement error
     */
    public record Verdicted(String words, boolean counts) {
        static Verdicted of(Optional<Difference> difference) {
            return new Verdicted(
                    difference
                            .map(known -> known.brief() + ", " + brief(known.verdict()))
                            .orElse(""),
                    difference
                            .filter(known -> known.verdict() == Verdict.BEYOND)
                            .isPresent());
        }

        private static String brief(Verdict verdict) {
            return switch (verdict) {
                case BEYOND -> "beyond error";
                case WITHIN -> "within error";
                case UNKNOWN -> "error not known";
            };
        }
    }

    static CompareLine of(Row row, Side side) {
        Cell cell = row.cell(side);
        Optional<Difference> last = cell.comparison().last();
        return new CompareLine(
                row.words(),
                cell.brief() + (cell.isPreliminary() ? " (preliminary)" : ""),
                row.cell(side.other()).brief(),
                Verdicted.of(cell.comparison().otherHand()),
                last.map(difference -> Brief.value(difference.then().value())).orElse(""),
                Verdicted.of(last),
                row.norm().map(Norm::brief).orElse("").replace("beyond neutral", "beyond"));
    }
}
