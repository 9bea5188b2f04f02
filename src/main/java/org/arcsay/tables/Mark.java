package org.arcsay.tables;

import java.util.Locale;

/** How well a number is known. */
public enum Mark {
    /** The number was seen in the text of the named source. */
    SEEN("seen in the source"),
    /** The number was seen in another text that quotes the named source. */
    SECOND_SOURCE("quoted by a second source"),
    /** The number is remembered; nobody has seen it in the named source. */
    FROM_MEMORY("from memory, not verified"),
    /** A habit of the trade without a published source. */
    COMMON_PRACTICE("common practice"),
    /** A choice made for this program. */
    OUR_DEFAULT("our default");

    private final String words;

    Mark(String words) {
        this.words = words;
    }

    public String words() {
        return words;
    }

    /** Whether a value with this mark may be printed as cited from its source. */
    public boolean citable() {
        return this == SEEN || this == SECOND_SOURCE;
    }

    /**
     * The mark as tables write it, such as "second source".
     *
     * @throws IllegalArgumentException when there is no such mark
     */
    public static Mark parse(String text) {
        return valueOf(text.strip().toUpperCase(Locale.ROOT).replace(' ', '_'));
    }
}
