package org.arcsay.model;

/**
 * The code a clinic uses instead of a name.
 *
 * @param text 1 to 40 letters, digits, dots, hyphens or underscores, beginning with a letter or digit
 */
public record PatientCode(String text) implements Comparable<PatientCode> {
    public PatientCode {
        if (!text.matches("[A-Za-z0-9][A-Za-z0-9._-]{0,39}")) {
            throw new IllegalArgumentException(
                    "'" + text
                            + "' is not a patient code: use 1 to 40 letters, digits, dots, hyphens or underscores, and no name");
        }
    }

    @Override
    public int compareTo(PatientCode other) {
        return text.compareTo(other.text);
    }

    @Override
    public String toString() {
        return text;
    }
}
