package org.arcsay.report.pdf;

import java.util.stream.IntStream;
import java.util.stream.Stream;

/**
 * How closely a page is set; sizes in points. Type stays as large as it is.
 *
 * @param pad above and below the text of a table row
 * @param dials height of the drawings of the joints
 * @param panels height of the bars over the visits
 * @param gap above a heading
 */
record Density(float pad, float dials, float panels, float gap) {
    static final Density ROOMY = new Density(2.1f, 128, 96, 8);
    private static final Density CLOSE = new Density(1.0f, 86, 66, 4);
    private static final int STEPS = 12;

    /** From the roomiest to the closest in small steps. */
    static Stream<Density> falling() {
        return IntStream.rangeClosed(0, STEPS).mapToObj(step -> of((float) (STEPS - step) / STEPS));
    }

    private static Density of(float share) {
        return new Density(
                between(CLOSE.pad, ROOMY.pad, share),
                between(CLOSE.dials, ROOMY.dials, share),
                between(CLOSE.panels, ROOMY.panels, share),
                between(CLOSE.gap, ROOMY.gap, share));
    }

    private static float between(float close, float roomy, float share) {
        return close + share * (roomy - close);
    }
}
