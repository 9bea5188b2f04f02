package org.arcsay.analysis;

import java.math.BigDecimal;
import java.util.List;
import java.util.Optional;
import org.arcsay.model.Mode;
import org.arcsay.model.Reading;
import org.arcsay.model.Side;
import org.arcsay.model.Slot;

/**
 * The total active (TAM) or passive (TPM) motion of one ray of one hand: flexion less extension deficits; hyperextension
 * counts as a deficit of 0.
 *
 * @param motion how it is made up
 * @param side the hand
 * @param mode active for TAM, passive for TPM
 * @param flexions the flexion readings used
 * @param extensions the extension readings used
 * @param missing what is needed and was not measured with a number; empty when the total is complete
 */
public record Total(
        TotalMotion motion,
        Side side,
        Mode mode,
        List<Reading> flexions,
        List<Reading> extensions,
        List<Slot> missing) {
    public Total {
        flexions = List.copyOf(flexions);
        extensions = List.copyOf(extensions);
        missing = List.copyOf(missing);
    }

    /** The total in degrees, or nothing while a part is missing: a missing part is never counted as 0. */
    public Optional<BigDecimal> degrees() {
        return missing.isEmpty() ? Optional.of(sum(flexions).add(deficits())) : Optional.empty();
    }

    /** Share of the published full motion. */
    public Optional<Percent> percentOfReference() {
        return degrees().map(degrees -> new Percent(degrees, motion.reference()));
    }

    /** Share of the same total of the other hand, or nothing where either is incomplete or the other is 0 or less. */
    public Optional<Percent> percentOf(Total other) {
        return degrees()
                .flatMap(degrees ->
                        other.degrees().filter(whole -> whole.signum() > 0).map(whole -> new Percent(degrees, whole)));
    }

    /** The band of the usual scale, from the share of the published full motion. */
    public Optional<GradeScale.Band> grade() {
        return percentOfReference().map(motion.scale()::grade);
    }

    /** "TAM" or "TPM". */
    public String abbreviation() {
        return mode == Mode.ACTIVE ? "TAM" : "TPM";
    }

    /** Whether a joint hyperextends, which does not add to the total. */
    public boolean hyperextends() {
        return extensions.stream().anyMatch(reading -> number(reading).signum() > 0);
    }

    private BigDecimal deficits() {
        return extensions.stream()
                .map(Total::number)
                .map(number -> number.min(BigDecimal.ZERO))
                .reduce(BigDecimal.ZERO, BigDecimal::add);
    }

    private static BigDecimal sum(List<Reading> readings) {
        return readings.stream().map(Total::number).reduce(BigDecimal.ZERO, BigDecimal::add);
    }

    private static BigDecimal number(Reading reading) {
        return Amount.of(reading.value()).orElseThrow().number();
    }
}
