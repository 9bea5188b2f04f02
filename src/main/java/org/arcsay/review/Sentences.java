package org.arcsay.review;

/** Small help with wording. */
final class Sentences {
    private Sentences() {}

    static String capital(String text) {
        return text.isEmpty() ? text : Character.toUpperCase(text.charAt(0)) + text.substring(1);
    }

    /** "1 reading", "2 readings". */
    static String count(int number, String noun) {
        return number + " " + noun + (number == 1 ? "" : "s");
    }
}
