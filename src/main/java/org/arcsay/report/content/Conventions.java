package org.arcsay.report.content;

import java.util.List;
import org.arcsay.model.SignConvention;

/** The sentences that every report carries. */
final class Conventions {
    static final List<String> CAUTIONS = List.of(
            "This report records what the professional said and confirmed; it contains no diagnosis and no advice on treatment.",
            "Entries marked preliminary have not been confirmed and must not be relied on.",
            "Local protocols, rules on records and the judgement of the licensed professional come first.",
            "Arcsay is not a certified medical device.");

    private static final List<String> KINDS = List.of(
            "Angles are degrees from neutral (0) in the direction named.",
            "\"Lacks\" is an extension deficit: degrees that are missing to neutral. \"Hyperextends\" is degrees beyond neutral.",
            "No sign is used here for extension.");

    private Conventions() {}

    static List<String> legend(SignConvention convention) {
        return List.of(KINDS.get(0), KINDS.get(1), KINDS.get(2) + " " + spokenMinus(convention));
    }

    private static String spokenMinus(SignConvention convention) {
        return switch (convention) {
            case UNSET -> "A spoken minus was always asked about.";
            case MINUS_IS_DEFICIT -> "In this clinic a spoken minus means a deficit.";
            case MINUS_IS_HYPEREXTENSION -> "In this clinic a spoken minus means hyperextension.";
        };
    }
}
