package org.arcsay.validate;

import java.math.BigDecimal;
import java.util.Optional;
import org.arcsay.analysis.ErrorFigure;
import org.arcsay.analysis.MeasurementError;
import org.arcsay.analysis.Rater;
import org.arcsay.model.Reading;

/** Measurement error as rules use it: MDC95, for different raters wherever it is not known who measured. */
record ErrorLimits(MeasurementError error) {
    Optional<BigDecimal> sameRater(Reading reading) {
        return mdc(reading, Rater.SAME);
    }

    Optional<BigDecimal> differentRaters(Reading reading) {
        return mdc(reading, Rater.DIFFERENT);
    }

    private Optional<BigDecimal> mdc(Reading reading, Rater rater) {
        return error.of(reading.measure(), reading.mode(), rater).map(ErrorFigure::mdc95);
    }
}
