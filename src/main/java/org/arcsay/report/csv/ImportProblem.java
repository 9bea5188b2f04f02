package org.arcsay.report.csv;

/**
 * One reason why a file was not imported.
 *
 * @param line line of the file, counted from 1, on which the row begins
 * @param column number of the column, counted from 1, or 0 when the whole line is meant
 * @param title title of the column, or ""
 * @param message what is wrong and what would be right
 */
public record ImportProblem(long line, int column, String title, String message) {
    /** The whole problem in one line for a person. */
    public String sentence() {
        return column == 0
                ? "line " + line + ": " + message
                : "line " + line + ", column " + column + " (" + title + "): " + message;
    }
}
