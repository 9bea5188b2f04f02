package org.arcsay.analysis;

import java.math.BigDecimal;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.arcsay.model.Measure;
import org.arcsay.model.Mode;
import org.arcsay.model.Motion;
import org.arcsay.model.Reading;
import org.arcsay.model.Side;
import org.arcsay.model.Site;
import org.arcsay.model.Slot;
import org.arcsay.model.Value.Extension;
import org.arcsay.model.Value.ExtensionKind;
import org.arcsay.model.Visit;

/**
 * What a joint lacks of extension, told apart by mode: the passive deficit is a flexion contracture; what the active deficit
 * has beyond it is an extension lag (Uejo 2007, on the AMA Guides).
 *
 * @param contracture the passive deficit in degrees, if any
 * @param lag the active deficit in degrees where it exceeds the passive one
 */
public record ExtensionLoss(Optional<BigDecimal> contracture, Optional<BigDecimal> lag) {
    /** From the last active and passive extension of a joint; nothing unless both were taken with a number. */
    public static Optional<ExtensionLoss> of(Visit visit, Side side, Site site) {
        Optional<BigDecimal> active = deficit(visit, side, site, Mode.ACTIVE);
        Optional<BigDecimal> passive = deficit(visit, side, site, Mode.PASSIVE);
        return active.flatMap(lacking -> passive.map(fixed -> of(lacking, fixed)));
    }

    /** Such as "passive deficit (contracture) 15 degrees, active beyond it (lag) 10 degrees"; empty where nothing is lacking. */
    public String words() {
        return Stream.of(
                        contracture.map(fixed -> "passive deficit (contracture) " + degrees(fixed)),
                        lag.map(active -> "active deficit (lag) " + degrees(active)
                                + contracture
                                        .map(fixed -> ", " + degrees(active.subtract(fixed)) + " more than passive")
                                        .orElse("")))
                .flatMap(Optional::stream)
                .collect(Collectors.joining("; "));
    }

    private static String degrees(BigDecimal number) {
        return Amount.Scale.DEGREES.count(number.toPlainString());
    }

    static ExtensionLoss of(BigDecimal activeDeficit, BigDecimal passiveDeficit) {
        return new ExtensionLoss(
                Optional.of(passiveDeficit).filter(deficit -> deficit.signum() > 0),
                Optional.of(activeDeficit).filter(deficit -> deficit.compareTo(passiveDeficit) > 0));
    }

    private static Optional<BigDecimal> deficit(Visit visit, Side side, Site site, Mode mode) {
        return Readings.last(visit, new Slot(side, new Measure(site, Motion.EXTENSION), mode))
                .map(Reading::value)
                .filter(Extension.class::isInstance)
                .map(Extension.class::cast)
                .map(value -> value.kind() == ExtensionKind.DEFICIT ? value.degrees() : BigDecimal.ZERO);
    }
}
