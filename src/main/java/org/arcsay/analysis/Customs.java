package org.arcsay.analysis;

import org.arcsay.analysis.Comparison.Yardstick;

/**
 * How a clinic compares and writes what was measured.
 *
 * @param norms the norm set that reports show and name
 * @param yardstick what counts as a change
 * @param notation how the arc of a joint is written
 */
public record Customs(NormSet norms, Yardstick yardstick, Notation notation) {
    /** What holds where a clinic has decided nothing. */
    public static Customs usual() {
        return new Customs(NormSets.standard().usual(), Yardstick.cautious(), Notation.PLAIN_WORDS);
    }

    public Customs with(NormSet other) {
        return new Customs(other, yardstick, notation);
    }

    /** The same with another person measuring, or the same one. */
    public Customs with(Rater rater) {
        return new Customs(norms, new Yardstick(yardstick.error(), rater, yardstick.confidence()), notation);
    }
}
