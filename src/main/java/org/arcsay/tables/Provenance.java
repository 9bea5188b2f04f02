package org.arcsay.tables;

/**
 * Where a number comes from.
 *
 * @param mark how well it is known
 * @param source the publication, or the reason for a default
 */
public record Provenance(Mark mark, String source) {
    public Provenance {
        if (source.isBlank()) {
            throw new IllegalArgumentException("a source or a reason is needed");
        }
    }

    /** The source with its mark; a value from memory is never worded as a citation. */
    public String words() {
        return mark.citable() ? source + " (" + mark.words() + ")" : mark.words() + ": " + source;
    }
}
