package org.arcsay.report.content;

import java.math.BigDecimal;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.arcsay.analysis.Amount;
import org.arcsay.analysis.Norm;
import org.arcsay.analysis.Readings;
import org.arcsay.model.Measure;
import org.arcsay.model.Mode;
import org.arcsay.model.Motion;
import org.arcsay.model.Side;
import org.arcsay.model.Slot;
import org.arcsay.model.Visit;

/**
 * The active range of one joint of one hand in the reported visit, beside the other hand and the norm set.
 *
 * @param side the hand
 * @param title what is measured
 * @param hinge whether both ends were measured; otherwise the motion begins at neutral
 * @param now the range of this hand
 * @param other the range of the other hand
 * @param norm the means of the norm set
 * @param words the same as text
 */
public record JointRange(
        Side side,
        String title,
        boolean hinge,
        DegreeRange now,
        Optional<DegreeRange> other,
        Optional<DegreeRange> norm,
        String words) {

    /** Every joint of a hand of which enough was measured to draw it. */
    static List<JointRange> of(ReportSource source, Visit visit, Side side) {
        Maker maker = new Maker(source, visit, side);
        return Stream.of(
                        maker.hinge("MP"),
                        maker.hinge("IP"),
                        maker.opening(Measure.of("CMC", Motion.RADIAL_ABDUCTION)),
                        maker.opening(Measure.of("CMC", Motion.PALMAR_ABDUCTION)))
                .flatMap(Optional::stream)
                .toList();
    }

    /** Collects the numbers of one hand. */
    private record Maker(ReportSource source, Visit visit, Side side) {
        Optional<JointRange> hinge(String site) {
            Measure flexion = Measure.of(site, Motion.FLEXION);
            Measure extension = Measure.of(site, Motion.EXTENSION);
            Optional<DegreeRange> norm = range(mean(extension), mean(flexion));
            return range(number(extension, side), number(flexion, side))
                    .map(now -> new JointRange(
                            side,
                            site,
                            true,
                            now,
                            range(number(extension, side.other()), number(flexion, side.other())),
                            norm,
                            words(flexion) + "; " + words(extension)));
        }

        Optional<JointRange> opening(Measure measure) {
            Optional<BigDecimal> neutral = Optional.of(BigDecimal.ZERO);
            return range(neutral, number(measure, side))
                    .map(now -> new JointRange(
                            side,
                            measure.words(),
                            false,
                            now,
                            range(neutral, number(measure, side.other())),
                            range(neutral, mean(measure)),
                            words(measure)));
        }

        private String words(Measure measure) {
            return measure.motion().words() + " " + value(measure, side) + ", "
                    + side.other().word() + " " + value(measure, side.other());
        }

        private String value(Measure measure, Side hand) {
            return Readings.last(visit, new Slot(hand, measure, Mode.ACTIVE))
                    .map(reading -> reading.value().words())
                    .orElse("no number");
        }

        private Optional<BigDecimal> number(Measure measure, Side hand) {
            return Readings.last(visit, new Slot(hand, measure, Mode.ACTIVE))
                    .flatMap(reading -> Amount.of(reading.value()))
                    .map(Amount::number);
        }

        private Optional<BigDecimal> mean(Measure measure) {
            return source.norms().find(measure, Mode.ACTIVE).map(Norm::mean);
        }

        private static Optional<DegreeRange> range(Optional<BigDecimal> beyondNeutral, Optional<BigDecimal> bent) {
            return beyondNeutral.flatMap(straight -> bent.map(end -> new DegreeRange(straight.negate(), end)));
        }
    }
}
