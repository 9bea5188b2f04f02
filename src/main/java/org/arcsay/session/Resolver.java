package org.arcsay.session;

import java.util.Optional;
import org.arcsay.model.ClinicSettings;
import org.arcsay.model.Dimension;
import org.arcsay.model.Distance;
import org.arcsay.model.Entry;
import org.arcsay.model.LengthUnit;
import org.arcsay.model.SignConvention;
import org.arcsay.model.Value;
import org.arcsay.model.Value.ExtensionKind;
import org.arcsay.model.Visit;
import org.arcsay.parser.SpokenKind;
import org.arcsay.parser.SpokenReading;
import org.arcsay.parser.SpokenValue;

/** Completes a spoken value from the clinic's settings and the visit so far, or says that it cannot. */
record Resolver(ClinicSettings settings) {

    /** The value, or empty when its direction must be asked. */
    Optional<Value> value(SpokenReading reading, Visit visit) {
        if (reading.value() instanceof SpokenValue.Exact exact) {
            return Optional.of(exact.value());
        }
        if (reading.value() instanceof SpokenValue.Extension extension) {
            return kind(extension.kind()).map(kind -> new Value.Extension(kind, extension.degrees()));
        }
        SpokenValue.Length length = (SpokenValue.Length) reading.value();
        Distance distance = new Distance(length.amount(), length.unit().orElseGet(() -> unitOf(visit)));
        return Optional.of(
                reading.measure().dimension() == Dimension.GAP ? new Value.Gap(distance) : new Value.Span(distance));
    }

    private Optional<ExtensionKind> kind(SpokenKind said) {
        if (said.isClear()) {
            return Optional.of(said.clear());
        }
        if (said == SpokenKind.BARE || settings.signConvention() == SignConvention.UNSET) {
            return Optional.empty();
        }
        boolean deficit = (said == SpokenKind.MINUS) == (settings.signConvention() == SignConvention.MINUS_IS_DEFICIT);
        return Optional.of(deficit ? ExtensionKind.DEFICIT : ExtensionKind.HYPEREXTENSION);
    }

    /** The unit of the last distance of this visit, or else the clinic's. */
    private LengthUnit unitOf(Visit visit) {
        LengthUnit unit = settings.lengthUnit();
        for (Entry entry : visit.counting()) {
            unit = entry.reading().value().length().map(Distance::unit).orElse(unit);
        }
        return unit;
    }
}
