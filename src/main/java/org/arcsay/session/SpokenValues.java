package org.arcsay.session;

import java.math.BigDecimal;
import java.util.Optional;
import org.arcsay.model.Distance;
import org.arcsay.model.LengthUnit;
import org.arcsay.model.Measure;
import org.arcsay.model.Reading;
import org.arcsay.model.Site;
import org.arcsay.model.Sites;
import org.arcsay.model.Value;
import org.arcsay.model.Value.ExtensionKind;
import org.arcsay.parser.Command;
import org.arcsay.parser.SpokenKind;
import org.arcsay.parser.SpokenReading;
import org.arcsay.parser.SpokenValue;

/** Gives a number said alone the meaning of the measure that it is for. */
final class SpokenValues {
    private SpokenValues() {}

    /** The number as the value of a measure that was named before. */
    static SpokenValue of(Measure measure, Optional<SpokenKind> kind, Command.Number said) {
        return switch (measure.dimension()) {
            case ANGLE -> new SpokenValue.Exact(new Value.Angle(said.number()));
            case EXTENSION -> extension(measure.site(), said.kind().or(() -> kind), said.number());
            case GAP, SPAN -> new SpokenValue.Length(said.number(), said.unit());
            case SCORE -> new SpokenValue.Exact(new Value.Score(said.number().intValueExact()));
        };
    }

    /** The number in place of an old value: its direction and unit stay unless said otherwise. */
    static SpokenValue inPlaceOf(Reading old, Command.Number said) {
        Optional<SpokenKind> oldKind = old.value() instanceof Value.Extension extension
                ? Optional.of(spoken(extension.kind()))
                : Optional.empty();
        Optional<LengthUnit> oldUnit = old.value().length().map(Distance::unit);
        Command.Number full =
                new Command.Number(said.number(), said.unit().or(() -> oldUnit), said.kind(), said.correction());
        return of(old.measure(), oldKind, full);
    }

    /** Neutral has no direction, so a number that replaces it needs one. */
    private static SpokenKind spoken(ExtensionKind kind) {
        return switch (kind) {
            case DEFICIT -> SpokenKind.DEFICIT;
            case HYPEREXTENSION -> SpokenKind.HYPEREXTENSION;
            case NEUTRAL -> SpokenKind.BARE;
        };
    }

    private static SpokenValue extension(Site site, Optional<SpokenKind> kind, BigDecimal degrees) {
        if (kind.isEmpty() && Sites.standard().info(site).naturalExtension()) {
            return new SpokenValue.Exact(new Value.Angle(degrees));
        }
        SpokenKind said = degrees.signum() == 0 ? SpokenKind.NEUTRAL : kind.orElse(SpokenKind.BARE);
        return new SpokenValue.Extension(said, degrees);
    }

    static SpokenReading withKind(SpokenReading reading, SpokenKind kind) {
        if (reading.value() instanceof SpokenValue.Extension extension
                && !extension.kind().isClear()) {
            return new SpokenReading(
                    reading.measure(), new SpokenValue.Extension(kind, extension.degrees()), reading.motionImplied());
        }
        return reading;
    }
}
