package org.arcsay.analysis;

import java.time.OffsetDateTime;
import java.util.List;
import java.util.OptionalInt;
import org.arcsay.model.Distance;
import org.arcsay.model.Heard;
import org.arcsay.model.JournalEvent;
import org.arcsay.model.LengthUnit;
import org.arcsay.model.Measure;
import org.arcsay.model.Mode;
import org.arcsay.model.Motion;
import org.arcsay.model.PatientCode;
import org.arcsay.model.Placement;
import org.arcsay.model.Reading;
import org.arcsay.model.Remark;
import org.arcsay.model.Side;
import org.arcsay.model.Value;
import org.arcsay.model.Versions;
import org.arcsay.model.Visit;

/** Short ways to write readings and visits. */
public final class Visits {
    public static final OffsetDateTime START = OffsetDateTime.parse("2026-03-02T09:00:00+01:00");

    private Visits() {}

    public static Reading reading(String measure, Value value) {
        return reading(Side.RIGHT, measure, Mode.ACTIVE, value);
    }

    public static Reading reading(Side side, String measure, Mode mode, Value value) {
        return new Reading(side, Measure.parse(measure), mode, value, Placement.UNSTATED);
    }

    public static Reading flexion(String joint, String degrees) {
        return reading(joint + ":FLEXION", Value.Angle.of(degrees));
    }

    public static Reading lacks(String joint, String degrees) {
        return reading(joint + ":EXTENSION", Value.Extension.deficit(degrees));
    }

    public static Reading hyper(String joint, String degrees) {
        return reading(joint + ":EXTENSION", Value.Extension.hyperextension(degrees));
    }

    public static Reading neutral(String joint) {
        return reading(joint + ":EXTENSION", Value.Extension.neutral());
    }

    public static Reading gap(String target, String amount, LengthUnit unit) {
        return reading(target + ":OPPOSITION_GAP", new Value.Gap(Distance.of(amount, unit)));
    }

    public static Reading score(int points) {
        return new Reading(
                Side.RIGHT,
                Measure.of("thumb", Motion.OPPOSITION_SCORE),
                Mode.ACTIVE,
                new Value.Score(points),
                Placement.UNSTATED);
    }

    public static Visit visit(Reading... readings) {
        return visit(1, START, readings);
    }

    public static Visit visit(long id, OffsetDateTime at, Reading... readings) {
        Visit visit = Visit.begun(id, new PatientCode("T-1"), at);
        for (Reading reading : readings) {
            visit = with(visit, reading);
        }
        return visit;
    }

    public static Visit with(Visit visit, Reading reading, Remark... remarks) {
        return visit.apply(new JournalEvent.Taken(
                visit.startedAt(),
                visit.nextEntryNumber(),
                reading,
                List.of(remarks),
                List.of(),
                Heard.typed("typed", new Versions("g", "none", "r")),
                false,
                OptionalInt.empty(),
                "",
                ""));
    }
}
