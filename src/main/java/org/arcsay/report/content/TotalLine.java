package org.arcsay.report.content;

import java.time.OffsetDateTime;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
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
 * @param first the difference from the first visit with a complete total
 * @param best the difference from the largest complete total of an earlier visit, the most recent among equals
 */
public record TotalLine(
        Total total,
        Optional<Percent> ofOtherHand,
        Optional<TotalDifference> otherHand,
        Optional<Since> last,
        Optional<Since> first,
        Optional<Since> best) {
    /** A complete total of an earlier visit. */
    record Past(OffsetDateTime at, Total total) {
        boolean complete() {
            return total.degrees().isPresent();
        }

        static Past better(Past older, Past newer) {
            return older.total()
                                    .degrees()
                                    .orElseThrow()
                                    .compareTo(newer.total().degrees().orElseThrow())
                            > 0
                    ? older
                    : newer;
        }
    }

    /**
     * How a total changed since a visit.
     *
     * @param at when that visit began
     * @param difference the difference from it
     */
    public record Since(OffsetDateTime at, TotalDifference difference) {
        public String words() {
            return difference.words();
        }
    }

    /** Earlier visits beside this one, each once, with what they are: last, first, best so far. */
    public List<String> changes() {
        Map<OffsetDateTime, List<String>> labels = new LinkedHashMap<>();
        Map<OffsetDateTime, Since> visits = new LinkedHashMap<>();
        collect("last complete", last, labels, visits);
        collect("first complete", first, labels, visits);
        collect("best so far", best, labels, visits);
        return visits.values().stream()
                .map(since -> "since " + DateTimeFormatter.ISO_LOCAL_DATE.format(since.at()) + " ("
                        + String.join(", ", labels.getOrDefault(since.at(), List.of()))
                        + "): " + since.words())
                .toList();
    }

    /** The first visit and the best one in brief, where they are not the last one, which stands in the table. */
    public List<String> longer() {
        List<String> parts = new ArrayList<>();
        brief("first", first).ifPresent(parts::add);
        brief("best so far", best.filter(since -> !same(first, since))).ifPresent(parts::add);
        return parts;
    }

    private Optional<String> brief(String label, Optional<Since> since) {
        return since.filter(known -> !same(last, known))
                .map(known -> label + " "
                        + known.difference().then().degrees().orElseThrow().toPlainString() + " degrees");
    }

    private static boolean same(Optional<Since> one, Since other) {
        return one.filter(known -> known.at().equals(other.at())).isPresent();
    }

    private static void collect(
            String label,
            Optional<Since> since,
            Map<OffsetDateTime, List<String>> labels,
            Map<OffsetDateTime, Since> visits) {
        since.ifPresent(known -> {
            labels.computeIfAbsent(known.at(), at -> new ArrayList<>()).add(label);
            visits.put(known.at(), known);
        });
    }

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
