package org.arcsay.app;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.arcsay.grammar.SpokenNumbers;

/** Typed text as the words that would be spoken: "IP flexion 75" becomes "i p flexion seventy five". */
public final class TypedSpeech {
    private static final Pattern TOKEN = Pattern.compile("\\d+(?:[.,]\\d+)?|[\\p{L}]+|\\S");
    private static final Map<String, String> SHORT = Map.ofEntries(
            Map.entry("ip", "i p"),
            Map.entry("mp", "m p"),
            Map.entry("mcp", "m c p"),
            Map.entry("cmc", "c m c"),
            Map.entry("pip", "p i p"),
            Map.entry("dip", "d i p"),
            Map.entry("mm", "millimeters"),
            Map.entry("cm", "centimeters"),
            Map.entry("deg", "degrees"),
            Map.entry("\u00b0", "degrees"));
    private static final String UNSPOKEN = ",.;:!?-\"'";

    private TypedSpeech() {}

    /** The words; a number that cannot be spoken stays as typed, so that it is refused and not changed. */
    public static List<String> words(String typed) {
        List<String> words = new ArrayList<>();
        Matcher token = TOKEN.matcher(typed.toLowerCase(Locale.ROOT));
        while (token.find()) {
            words.addAll(words(token.group(), Character.isDigit(token.group().charAt(0))));
        }
        return words;
    }

    private static List<String> words(String token, boolean number) {
        if (number) {
            return spoken(token.replace(',', '.'));
        }
        if (UNSPOKEN.contains(token)) {
            return token.equals("-") ? List.of("minus") : List.of();
        }
        return List.of(SHORT.getOrDefault(token, token).split(" "));
    }

    private static List<String> spoken(String number) {
        try {
            return SpokenNumbers.words(new BigDecimal(number));
        } catch (IllegalArgumentException unspeakable) {
            return List.of(number);
        }
    }
}
