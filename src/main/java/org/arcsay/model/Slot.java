package org.arcsay.model;

/**
 * One place in a series.
 *
 * @param side the hand
 * @param measure the motion at a site
 * @param mode active or passive
 */
public record Slot(Side side, Measure measure, Mode mode) {
    public Slot otherSide() {
        return new Slot(side.other(), measure, mode);
    }

    public String words() {
        return side.word() + " " + measure.words() + ", " + mode.word();
    }
}
