package org.arcsay.analysis;

import java.math.BigDecimal;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.arcsay.model.Value.Angle;
import org.arcsay.model.Value.Extension;

/** Reads an arc in plain words. */
final class PlainWords {
    private static final String NUMBER = "(\\d+(?:\\.\\d+)?)";
    private static final Pattern ARC = Pattern.compile("(?:(lacks|hyperextends) " + NUMBER
            + " degrees|(reaches neutral, 0 degrees)), flexes to " + NUMBER + " degrees");

    private PlainWords() {}

    static Arc read(String text) {
        Matcher matcher = ARC.matcher(text);
        Notation.require(
                matcher.matches(),
                "expected 'lacks 10 degrees', 'reaches neutral, 0 degrees' or 'hyperextends 10 degrees', then"
                        + " ', flexes to 75 degrees'");
        return new Arc(extension(matcher), new Angle(new BigDecimal(matcher.group(4))));
    }

    private static Extension extension(Matcher matcher) {
        if (matcher.group(3) != null) {
            return Extension.neutral();
        }
        return matcher.group(1).equals("lacks")
                ? Extension.deficit(matcher.group(2))
                : Extension.hyperextension(matcher.group(2));
    }
}
