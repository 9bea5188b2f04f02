package org.arcsay.report.csv;

/**
 * Text cells that a spreadsheet cannot take for a formula, without losing anything.
 *
 * <p>A text that begins with a character that spreadsheets act upon gets an apostrophe in front, and so does a text that
 * already begins with an apostrophe, so that {@link #read} always gives the original back. The set of characters follows the
 * OWASP page "CSV Injection".
 */
final class SafeText {
    private static final String DANGEROUS = "=+-@\t\r\n'\uFF1D\uFF0B\uFF0D\uFF20";

    private SafeText() {}

    static String write(String text) {
        return !text.isEmpty() && DANGEROUS.indexOf(text.charAt(0)) >= 0 ? "'" + text : text;
    }

    static String read(String cell) {
        return cell.startsWith("'") ? cell.substring(1) : cell;
    }
}
