package org.arcsay.parser;

import java.math.BigDecimal;
import java.util.List;
import org.arcsay.model.Measure;
import org.arcsay.model.Motion;
import org.arcsay.model.Site;
import org.arcsay.model.Value;

/**
 * One reading as far as the words tell it.
 *
 * @param measure the motion at a site
 * @param value what was said about it
 * @param motionImplied whether flexion was meant by naming the joint alone, which the echo must then say
 */
public record SpokenReading(Measure measure, SpokenValue value, boolean motionImplied) {

    /** An arc such as "ten to fifty" as the two readings that it stands for: what lacks to neutral, and flexion. */
    public static List<SpokenReading> arc(Site site, BigDecimal from, BigDecimal to) {
        SpokenKind start = from.signum() == 0 ? SpokenKind.NEUTRAL : SpokenKind.DEFICIT;
        return List.of(
                new SpokenReading(new Measure(site, Motion.EXTENSION), new SpokenValue.Extension(start, from), false),
                new SpokenReading(
                        new Measure(site, Motion.FLEXION), new SpokenValue.Exact(new Value.Angle(to)), false));
    }
}
