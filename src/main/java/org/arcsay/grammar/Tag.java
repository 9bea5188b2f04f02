package org.arcsay.grammar;

/**
 * One piece of meaning that a path through the grammar carries.
 *
 * @param key such as {@code motion}
 * @param value such as {@code FLEXION}
 */
public record Tag(String key, String value) {
    static Tag parse(String text) {
        int colon = text.indexOf(':');
        if (colon < 1 || colon == text.length() - 1) {
            throw new IllegalArgumentException("a tag is written {key:value}, not {" + text + "}");
        }
        return new Tag(
                text.substring(0, colon).strip(), text.substring(colon + 1).strip());
    }

    @Override
    public String toString() {
        return key + ":" + value;
    }
}
