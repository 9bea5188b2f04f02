package org.arcsay.review;

import java.time.Clock;
import java.time.Duration;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import org.arcsay.model.ClinicSettings;
import org.arcsay.model.Distance;
import org.arcsay.model.Finding;
import org.arcsay.model.Finding.LabelledNumber;
import org.arcsay.model.Heard;
import org.arcsay.model.JournalEvent;
import org.arcsay.model.JournalEvent.Taken;
import org.arcsay.model.LengthUnit;
import org.arcsay.model.Measure;
import org.arcsay.model.Mode;
import org.arcsay.model.Motion;
import org.arcsay.model.PatientCode;
import org.arcsay.model.Placement;
import org.arcsay.model.Reading;
import org.arcsay.model.Remark;
import org.arcsay.model.Severity;
import org.arcsay.model.Side;
import org.arcsay.model.Value;
import org.arcsay.model.Value.Angle;
import org.arcsay.model.Value.Extension;
import org.arcsay.model.Value.Gap;
import org.arcsay.model.Versions;
import org.arcsay.model.Visit;

/** An invented visit: a stiff right thumb after six weeks in a splint; one reading is doubtful and one is held. */
public final class DemoVisit {
    public static final OffsetDateTime START = OffsetDateTime.of(2026, 3, 4, 9, 30, 0, 0, ZoneOffset.ofHours(1));
    public static final Clock CLOCK = Clock.fixed(START.plusMinutes(20).toInstant(), ZoneOffset.ofHours(1));
    public static final Measure IP_FLEXION = Measure.of("IP", Motion.FLEXION);
    public static final Measure IP_EXTENSION = Measure.of("IP", Motion.EXTENSION);
    public static final Measure MP_FLEXION = Measure.of("MP", Motion.FLEXION);
    public static final Measure MP_EXTENSION = Measure.of("MP", Motion.EXTENSION);
    public static final Measure RADIAL = Measure.of("CMC", Motion.RADIAL_ABDUCTION);
    public static final Measure TO_RING = Measure.of("ring tip", Motion.OPPOSITION_GAP);
    public static final List<Measure> MEASURES =
            List.of(MP_FLEXION, MP_EXTENSION, IP_FLEXION, IP_EXTENSION, RADIAL, TO_RING);
    public static final int MP_FLEXION_ENTRY = 1;
    public static final int MP_EXTENSION_ENTRY = 2;
    public static final int DOUBTFUL_ENTRY = 3;
    public static final int HELD_ENTRY = 4;
    public static final int GAP_ENTRY = 6;
    private static final Versions SPOKEN = new Versions("g-demo", "demo-model", "r-demo");
    private static final Versions TYPED = new Versions("g-demo", "none", "r-demo");

    private final List<JournalEvent> events = new ArrayList<>();

    private DemoVisit() {}

    public static List<JournalEvent> events() {
        DemoVisit demo = new DemoVisit();
        demo.take(MP_FLEXION, Angle.of(48), "em pee flexion forty eight", List.of(), List.of(), false);
        demo.take(
                MP_EXTENSION,
                Extension.deficit("10"),
                "em pee extension lacks ten degrees pain at end range",
                List.of(new Remark.Pain(Remark.PainPlace.AT_END_RANGE, OptionalInt.of(3))),
                List.of(),
                false);
        demo.take(IP_FLEXION, Angle.of(15), "eye pee flexion fifteen", List.of(), List.of(teenOrTy()), false);
        demo.take(
                IP_EXTENSION,
                Extension.deficit("30"),
                "eye pee extension lacks thirty",
                List.of(),
                List.of(beyondFlexion()),
                true);
        demo.take(
                RADIAL,
                Angle.of(42),
                "radial abduction forty two",
                List.of(new Remark.Quality(Remark.Feel.TIGHT)),
                List.of(),
                false);
        demo.take(
                TO_RING,
                new Gap(Distance.of("38", LengthUnit.MILLIMETRE)),
                "opposition ring thirty eight millimetres",
                List.of(),
                List.of(),
                false);
        return List.copyOf(demo.events);
    }

    public static Visit visit() {
        return Visit.begun(7, new PatientCode("TH-014"), START).replay(events());
    }

    public static ReviewContext context() {
        return new ReviewContext(
                CLOCK, "KL", TYPED, ClinicSettings.defaults(), Optional.of(new ReportScript()), MEASURES);
    }

    /** Asks about flexion over 90 degrees and holds flexion over 120; enough to see what the review does with findings. */
    public static List<Finding> judge(Reading reading, Visit others) {
        if (!(reading.value() instanceof Angle angle) || angle.degrees().intValue() <= 90) {
            return List.of();
        }
        Severity severity = angle.degrees().intValue() > 120 ? Severity.HOLD : Severity.ASK;
        return List.of(new Finding("demo.high", severity, "More than 90 degrees is unusual here.", List.of()));
    }

    private void take(
            Measure measure, Value value, String words, List<Remark> remarks, List<Finding> findings, boolean held) {
        int number = events.size() + 1;
        Placement placement = value instanceof Gap ? Placement.RULER : Placement.DORSAL;
        Duration from = Duration.ofSeconds(8L * number);
        events.add(new Taken(
                START.plus(from),
                number,
                new Reading(Side.RIGHT, measure, Mode.ACTIVE, value, placement),
                remarks,
                findings,
                new Heard(words, Heard.Source.VOICE, 0.97, from, from.plusSeconds(2), SPOKEN),
                held,
                OptionalInt.empty(),
                "",
                ""));
    }

    private static Finding teenOrTy() {
        return new Finding(
                "heard.teen-ty",
                Severity.ASK,
                "15 and 50 sound alike, and 50 degrees is nearer to the last visit (46 degrees).",
                List.of(
                        new LabelledNumber("heard", "15", "degrees"),
                        new LabelledNumber("last visit", "46", "degrees")),
                Optional.of(Angle.of(50)));
    }

    private static Finding beyondFlexion() {
        return new Finding(
                "contradiction.deficit-over-flexion",
                Severity.HOLD,
                "IP lacks 30 degrees to straight but bends only to 15 degrees; both cannot be true.",
                List.of(
                        new LabelledNumber("deficit", "30", "degrees"),
                        new LabelledNumber("flexion", "15", "degrees")));
    }
}
