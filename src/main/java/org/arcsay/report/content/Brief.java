package org.arcsay.report.content;

import org.arcsay.model.Value;

/** Values and sentences with degree signs, where room is short. */
public final class Brief {
    private Brief() {}

    /** Such as "lacks 5°", "neutral, 0°" or "not tested: pain". */
    public static String value(Value value) {
        return degrees(value.words().replace("reaches neutral, 0 degrees", "neutral, 0 degrees"));
    }

    /** Any sentence with degree signs in place of the word. */
    public static String degrees(String sentence) {
        return sentence.replace(" degrees", "\u00B0").replace(" degree", "\u00B0");
    }
}
