package org.arcsay.analysis;

import java.math.BigDecimal;
import org.arcsay.tables.Provenance;

/**
 * How far two readings may differ by measurement alone.
 *
 * @param sem standard error of measurement
 * @param mdc90 minimal detectable change at 90 % confidence
 * @param mdc95 minimal detectable change at 95 % confidence
 * @param scale the unit of all three
 * @param rater whether one person or two took the readings
 * @param provenance where the figure comes from
 */
public record ErrorFigure(
        BigDecimal sem, BigDecimal mdc90, BigDecimal mdc95, Amount.Scale scale, Rater rater, Provenance provenance) {
    static ErrorFigure fromSem(BigDecimal sem, Amount.Scale scale, Rater rater, Provenance provenance) {
        return new ErrorFigure(sem, Statistics.mdc90(sem), Statistics.mdc95(sem), scale, rater, provenance);
    }

    static ErrorFigure fromMdc95(BigDecimal mdc95, Amount.Scale scale, Rater rater, Provenance provenance) {
        BigDecimal sem = Statistics.semFromMdc95(mdc95);
        return new ErrorFigure(sem, Statistics.mdc90(sem), mdc95, scale, rater, provenance);
    }

    /** The figure for that confidence. */
    public BigDecimal threshold(Confidence confidence) {
        return confidence == Confidence.NINETY ? mdc90 : mdc95;
    }

    /** Confidence at which a change counts as beyond measurement error. */
    public enum Confidence {
        NINETY,
        NINETY_FIVE;

        public String words() {
            return this == NINETY ? "90 %" : "95 %";
        }
    }
}
