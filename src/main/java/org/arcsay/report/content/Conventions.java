package org.arcsay.report.content;

import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.arcsay.analysis.Comparison;
import org.arcsay.analysis.Comparison.Yardstick;
import org.arcsay.analysis.Difference;
import org.arcsay.analysis.Norm;
import org.arcsay.analysis.NormSet;
import org.arcsay.model.SignConvention;

/** The sentences that every report carries. */
final class Conventions {
    static final List<String> CAUTIONS = List.of(
            "This report records what the professional said and confirmed; it contains no diagnosis and no advice on treatment.",
            "Entries marked preliminary have not been confirmed and must not be relied on.",
            "Local protocols, rules on records and the judgement of the licensed professional come first.",
            "Arcsay is not a certified medical device.");

    private Conventions() {}

    static List<String> legend(SignConvention convention) {
        return List.of(
                "Angles are degrees from neutral (0) in the direction named.",
                "\"Lacks\" is an extension deficit, degrees missing to neutral; \"hyperextends\" is degrees beyond neutral.",
                "Extension is written without a sign. " + spokenMinus(convention),
                "Distances remain between the thumb tip and its target; 0 touches, smaller is better.");
    }

    private static String spokenMinus(SignConvention convention) {
        return switch (convention) {
            case UNSET -> "A spoken minus was always asked about.";
            case MINUS_IS_DEFICIT -> "In this clinic a spoken minus means a deficit.";
            case MINUS_IS_HYPEREXTENSION -> "In this clinic a spoken minus means hyperextension.";
        };
    }

    private static String limits(List<Row> rows, Function<Comparison, Optional<Difference>> which) {
        return rows.stream()
                .flatMap(row -> Stream.of(row.left(), row.right()))
                .flatMap(cell -> which.apply(cell.comparison()).stream())
                .flatMap(difference -> difference.threshold().stream())
                .map(limit -> limit.figure().scale().count(limit.amount().toPlainString()) + " ("
                        + limit.provenance().mark().words() + ")")
                .distinct()
                .collect(Collectors.joining(", "));
    }

    static List<String> basis(NormSet set, List<Row> rows, Yardstick yardstick) {
        List<Norm> used = rows.stream().flatMap(row -> row.norm().stream()).toList();
        Stream<String> sources = used.stream()
                .map(norm -> "Norms: " + set.label() + "; " + norm.sample() + "; "
                        + norm.provenance().words() + ".")
                .distinct();
        String error = "A change counts only beyond measurement error: "
                + yardstick.confidence().words() + ", "
                + yardstick.rater().words() + " between visits, same rater between the hands of one visit.";
        String between = limits(rows, Comparison::last);
        String hands = limits(rows, Comparison::otherHand);
        String limits = "Figures used between visits: " + (between.isEmpty() ? "none" : between)
                + "; between the hands: " + (hands.isEmpty() ? "none" : hands) + ".";
        return Stream.concat(sources, Stream.of(error, limits)).toList();
    }
}
