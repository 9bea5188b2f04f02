package org.arcsay.grammar;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;

/** Numbers as words, both ways: every form in which a therapist may say a number, and the form in which we say it. */
public final class SpokenNumbers {
    /** Largest number that can be said. */
    public static final int HIGHEST = 180;

    /** Largest score that can be said. */
    public static final int HIGHEST_SCORE = 10;

    private static final List<String> ONES = List.of(
            "zero",
            "one",
            "two",
            "three",
            "four",
            "five",
            "six",
            "seven",
            "eight",
            "nine",
            "ten",
            "eleven",
            "twelve",
            "thirteen",
            "fourteen",
            "fifteen",
            "sixteen",
            "seventeen",
            "eighteen",
            "nineteen");
    private static final List<String> TENS =
            List.of("twenty", "thirty", "forty", "fifty", "sixty", "seventy", "eighty", "ninety");

    /** Number rules that a grammar may use by name. */
    static final Map<String, Integer> RULES = Map.of("numbers.value", HIGHEST, "numbers.score", HIGHEST_SCORE);

    private SpokenNumbers() {}

    /** The usual words for a number from 0 to 180 with at most one decimal, such as "one hundred five point two". */
    public static List<String> words(BigDecimal number) {
        BigDecimal tenths = tenths(number);
        return withTenths(new ArrayList<>(whole(number.intValue()).get(0)), tenths);
    }

    /** The number digit by digit, such as "seven five", "one zero five" or "three point eight". */
    public static List<String> digits(BigDecimal number) {
        BigDecimal tenths = tenths(number);
        List<String> words = new ArrayList<>();
        for (char digit : String.valueOf(number.intValue()).toCharArray()) {
            words.add(ONES.get(digit - '0'));
        }
        return withTenths(words, tenths);
    }

    private static BigDecimal tenths(BigDecimal number) {
        BigDecimal tenths = number.remainder(BigDecimal.ONE).movePointRight(1);
        if (number.signum() < 0
                || number.compareTo(BigDecimal.valueOf(HIGHEST)) > 0
                || tenths.stripTrailingZeros().scale() > 0) {
            throw new IllegalArgumentException("no spoken form for " + number.toPlainString());
        }
        return tenths;
    }

    private static List<String> withTenths(List<String> words, BigDecimal tenths) {
        if (tenths.signum() != 0) {
            words.add("point");
            words.add(ONES.get(tenths.setScale(0, RoundingMode.UNNECESSARY).intValue()));
        }
        return words;
    }

    /** The word for one digit. */
    static String digit(int digit) {
        return ONES.get(digit);
    }

    /** Every way of saying a whole number from 0 to 180; the first is the usual one. */
    static List<List<String>> whole(int number) {
        if (number < 100) {
            return belowHundred(number);
        }
        List<List<String>> forms = new ArrayList<>();
        int rest = number - 100;
        if (rest == 0) {
            forms.add(List.of("one", "hundred"));
            forms.add(List.of("a", "hundred"));
        } else {
            String[][] openings = {
                {"one", "hundred"}, {"one", "hundred", "and"}, {"a", "hundred"}, {"a", "hundred", "and"}
            };
            for (String[] opening : openings) {
                forms.add(join(List.of(opening), plain(rest)));
            }
            if (rest >= 10) {
                forms.add(join(List.of("one"), plain(rest)));
            }
        }
        forms.addAll(digitForms(number));
        return forms;
    }

    private static List<List<String>> belowHundred(int number) {
        List<List<String>> forms = new ArrayList<>(List.of(plain(number)));
        if (number >= 10) {
            forms.addAll(digitForms(number));
        }
        return forms;
    }

    private static List<String> plain(int number) {
        if (number < 20) {
            return List.of(ONES.get(number));
        }
        String tens = TENS.get(number / 10 - 2);
        return number % 10 == 0 ? List.of(tens) : List.of(tens, ONES.get(number % 10));
    }

    private static List<List<String>> digitForms(int number) {
        List<List<String>> forms = new ArrayList<>(List.of(List.of()));
        for (char digit : String.valueOf(number).toCharArray()) {
            List<List<String>> longer = new ArrayList<>();
            for (List<String> form : forms) {
                longer.add(join(form, List.of(ONES.get(digit - '0'))));
                if (digit == '0') {
                    longer.add(join(form, List.of("oh")));
                }
            }
            forms = longer;
        }
        return forms;
    }

    private static List<String> join(List<String> head, List<String> tail) {
        List<String> all = new ArrayList<>(head);
        all.addAll(tail);
        return all;
    }
}
