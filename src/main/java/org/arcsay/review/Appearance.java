package org.arcsay.review;

import java.util.List;

/**
 * How the windows look.
 *
 * @param dark light text on dark ground
 * @param textPercent size of text, one of {@link #SIZES}
 */
public record Appearance(boolean dark, int textPercent) {
    /** Sizes of text to choose from, in percent of the usual one, growing. */
    public static final List<Integer> SIZES = List.of(100, 125, 150, 175, 200);

    public static final Appearance USUAL = new Appearance(false, SIZES.get(0));

    public Appearance {
        if (!SIZES.contains(textPercent)) {
            throw new IllegalArgumentException("text is " + textPercent + " %, and not one of " + SIZES);
        }
    }

    /** Keeps what was chosen. */
    public interface Keeper {
        /** Keeps nothing. */
        Keeper NONE = chosen -> {};

        /** Takes it for the next start; that it could not be kept is not told. */
        void keep(Appearance chosen);
    }
}
