package org.arcsay.docs;

/** Lines of a table. */
final class Markdown {
    private Markdown() {}

    static String row(String... cells) {
        return "| " + String.join(" | ", cells) + " |\n";
    }
}
