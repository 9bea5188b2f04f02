package org.arcsay.report.content;

import java.util.List;
import java.util.stream.Stream;
import org.arcsay.analysis.Comparison.Yardstick;
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

    static List<String> basis(NormSet set, List<Norm> used, Yardstick yardstick) {
        Stream<String> sources = used.stream()
                .map(norm -> "Norms: " + set.label() + "; " + norm.sample() + "; "
                        + norm.provenance().words() + ".")
                .distinct();
        String error = "A change counts only beyond measurement error: "
                + yardstick.confidence().words() + ", "
                + yardstick.rater().words() + " between visits, same rater between the hands of one visit.";
        return Stream.concat(sources, Stream.of(error)).toList();
    }
}
