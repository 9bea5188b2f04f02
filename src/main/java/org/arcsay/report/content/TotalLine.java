package org.arcsay.report.content;

import java.util.Optional;
import org.arcsay.analysis.Percent;
import org.arcsay.analysis.Total;
import org.arcsay.analysis.TotalDifference;

/**
 * A total of one hand with what it is compared with.
 *
 * @param total the total, complete or not
 * @param ofOtherHand its share of the same total of the other hand
 * @param otherHand the difference from the other hand
 * @param last the difference from the last earlier visit with a complete total
 */
public record TotalLine(
        Total total,
        Optional<Percent> ofOtherHand,
        Optional<TotalDifference> otherHand,
        Optional<TotalDifference> last) {
    /** Such as "right TAM (thumb total motion, active): 103 degrees, 73.6 % of 140 degrees, Good (at least 70 %)". */
    public String words() {
        return heading() + ": "
                + total.degrees()
                        .map(d -> d.toPlainString() + " degrees" + share())
                        .orElseGet(this::lacking);
    }

    /** Such as "right TAM (thumb total motion, active)". */
    public String heading() {
        return total.side().word() + " " + total.abbreviation() + " ("
                + total.motion().title() + ", " + total.mode().word() + ")";
    }

    private String share() {
        String reference = total.percentOfReference()
                .map(percent -> ", " + percent.words())
                .orElse("");
        String grade = total.grade()
                .map(band -> ", " + band.words() + ", " + total.motion().scale().title())
                .orElse("");
        String other = ofOtherHand
                .map(percent -> ", " + percent.rounded(1).toPlainString() + " % of the other hand")
                .orElse("");
        return reference + grade + other + (total.hyperextends() ? ", hyperextension not added" : "");
    }

    private String lacking() {
        return "not complete, lacks "
                + String.join(
                        ", ",
                        total.missing().stream()
                                .map(slot -> slot.measure().words())
                                .toList());
    }
}
