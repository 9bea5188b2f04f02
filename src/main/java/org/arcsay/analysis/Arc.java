package org.arcsay.analysis;

import java.util.Optional;
import org.arcsay.model.Measure;
import org.arcsay.model.Mode;
import org.arcsay.model.Motion;
import org.arcsay.model.Reading;
import org.arcsay.model.Side;
import org.arcsay.model.Site;
import org.arcsay.model.Slot;
import org.arcsay.model.Value;
import org.arcsay.model.Value.Angle;
import org.arcsay.model.Value.Extension;
import org.arcsay.model.Value.ExtensionKind;
import org.arcsay.model.Visit;

/**
 * The motion of a hinge joint from its straightest to its most bent position.
 *
 * @param extension the straightest position
 * @param flexion the most bent position; never less than a deficit of the extension
 */
public record Arc(Extension extension, Angle flexion) {
    public Arc {
        if (extension.kind() == ExtensionKind.DEFICIT && flexion.degrees().compareTo(extension.degrees()) < 0) {
            throw new IllegalArgumentException("a joint that lacks "
                    + extension.degrees().toPlainString() + " degrees cannot flex to only "
                    + flexion.degrees().toPlainString() + " degrees");
        }
    }

    /** The last readings of a joint in a visit, if both were taken with a number and do not contradict each other. */
    public static Optional<Arc> of(Visit visit, Side side, Site site, Mode mode) {
        Optional<Extension> extension = Readings.last(visit, new Slot(side, new Measure(site, Motion.EXTENSION), mode))
                .map(Reading::value)
                .map(Arc::extension);
        Optional<Angle> flexion = Readings.last(visit, new Slot(side, new Measure(site, Motion.FLEXION), mode))
                .map(reading -> (Angle) reading.value());
        return extension.flatMap(
                straight -> flexion.filter(bent -> fits(straight, bent)).map(bent -> new Arc(straight, bent)));
    }

    private static Extension extension(Value value) {
        return value instanceof Angle natural
                ? new Extension(ExtensionKind.HYPEREXTENSION, natural.degrees())
                : (Extension) value;
    }

    private static boolean fits(Extension extension, Angle flexion) {
        return extension.beyondNeutral().negate().compareTo(flexion.degrees()) <= 0;
    }
}
