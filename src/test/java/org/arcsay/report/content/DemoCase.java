package org.arcsay.report.content;

import java.time.Duration;
import java.time.OffsetDateTime;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import org.arcsay.analysis.Customs;
import org.arcsay.analysis.NormSets;
import org.arcsay.model.ClinicSettings;
import org.arcsay.model.Finding;
import org.arcsay.model.Finding.LabelledNumber;
import org.arcsay.model.LengthUnit;
import org.arcsay.model.Measure;
import org.arcsay.model.Mode;
import org.arcsay.model.Motion;
import org.arcsay.model.Placement;
import org.arcsay.model.Remark;
import org.arcsay.model.Remark.Feel;
import org.arcsay.model.Remark.PainPlace;
import org.arcsay.model.Severity;
import org.arcsay.model.Side;
import org.arcsay.model.SignConvention;
import org.arcsay.model.Value.Angle;
import org.arcsay.model.Value.Extension;
import org.arcsay.model.Value.NotTestedReason;

/**
 * An invented patient: the right thumb after a tendon repair, followed over four visits, the left one untouched and very
 * mobile. The right IP deficit improves; the left thumb hyperextends, once so far that it was asked about and is true; passive
 * motion is not tested at first; one number was heard wrong and corrected after it had been confirmed.
 */
public final class DemoCase {
    private static final String PATIENT = "demo-07";
    private static final Measure IP_EXTENSION = Measure.of("IP", Motion.EXTENSION);
    private static final Measure MP_FLEXION = Measure.of("MP", Motion.FLEXION);

    private DemoCase() {}

    public static Report report() {
        return Report.of(source());
    }

    public static ReportSource source() {
        return source(visits());
    }

    /** The settings of the demo clinic with other visits. */
    public static ReportSource source(List<VisitRecord> visits) {
        return new ReportSource(
                visits,
                new ClinicSettings(SignConvention.MINUS_IS_DEFICIT, LengthUnit.MILLIMETRE),
                Customs.usual().with(NormSets.standard().named("barakat-2013").orElseThrow()),
                OffsetDateTime.parse("2026-03-24T08:15:00+01:00"),
                "Arcsay 0.1.0");
    }

    public static List<VisitRecord> visits() {
        return List.of(first(), second(), third(), fourth());
    }

    private static VisitRecord first() {
        VisitScript visit = new VisitScript(1, PATIENT, "2026-01-12T09:30:00+01:00");
        left(visit);
        right(visit, 30, -15, 40, -35);
        visit.gap("index tip", 24).gap("middle tip", 38).score(2);
        passiveNotAllowed(visit);
        return visit.end().confirmAll().record();
    }

    private static VisitRecord second() {
        VisitScript visit = new VisitScript(2, PATIENT, "2026-02-02T09:30:00+01:00").hand(Side.RIGHT);
        right(visit, 38, -10, 44, -25);
        visit.gap("index tip", 12).gap("middle tip", 25).score(3);
        passiveNotAllowed(visit);
        return visit.end().confirmAll().record();
    }

    private static VisitRecord third() {
        VisitScript visit = new VisitScript(3, PATIENT, "2026-02-23T10:00:00+01:00");
        right(visit, 44, -5, 47, -15);
        visit.gap("index tip", 0).gap("middle tip", 10).score(4);
        passiveNotAllowed(visit);
        return visit.end().confirmAll().record();
    }

    private static VisitRecord fourth() {
        VisitScript visit = new VisitScript(4, PATIENT, "2026-03-23T10:05:00+01:00");
        leftAgain(visit);
        visit.hand(Side.RIGHT).placed(Placement.DORSAL);
        visit.angle("MP", Motion.FLEXION, 15);
        int misheard = visit.lastEntry();
        visit.extension("MP", 0).joint("IP", 58, -5);
        visit.remark(new Remark.Pain(PainPlace.AT_END_RANGE, OptionalInt.of(3)))
                .remark(new Remark.Note(
                        "Narbe gerötet, aber weich; Übungen laut Patient gut verträglich – Schwellung über dem"
                                + " Daumenballen gegenüber dem letzten Besuch deutlich zurückgegangen, señala además"
                                + " tirantez al final del recorrido"));
        visit.angle("CMC", Motion.RADIAL_ABDUCTION, 55).angle("CMC", Motion.PALMAR_ABDUCTION, 54);
        visit.angle("IP", Motion.FLEXION, 85);
        visit.reject(visit.lastEntry(), "said to the patient, not a reading");
        visit.placed(Placement.RULER)
                .gap("index tip", 0)
                .gap("middle tip", 0)
                .gap("ring tip", 12)
                .notTested("little tip", Motion.OPPOSITION_GAP, NotTestedReason.PAIN)
                .score(5);
        visit.mode(Mode.PASSIVE).placed(Placement.DORSAL);
        visit.joint("MP", 60, 5).joint("IP", 70, 0).remark(new Remark.Quality(Feel.FIRM_END_FEEL));
        visit.end().confirmAll();
        visit.later(Duration.ofHours(1)).mode(Mode.ACTIVE);
        visit.correct(misheard, MP_FLEXION, Angle.of(50), "fifty was heard as fifteen")
                .confirmAll();
        return visit.record();
    }

    private static void left(VisitScript visit) {
        visit.hand(Side.LEFT).placed(Placement.DORSAL);
        visit.joint("MP", 58, 8).joint("IP", 82, 45);
        visit.angle("CMC", Motion.RADIAL_ABDUCTION, 62).angle("CMC", Motion.PALMAR_ABDUCTION, 60);
        visit.placed(Placement.RULER).gap("index tip", 0).gap("middle tip", 0).score(10);
    }

    private static void leftAgain(VisitScript visit) {
        visit.hand(Side.LEFT).placed(Placement.DORSAL);
        visit.joint("MP", 60, 10).angle("IP", Motion.FLEXION, 84);
        visit.held(IP_EXTENSION, Extension.hyperextension("55"), veryMobile())
                .release("measured again with the arm on the side, same value; always been so");
        visit.angle("CMC", Motion.RADIAL_ABDUCTION, 64).angle("CMC", Motion.PALMAR_ABDUCTION, 61);
        visit.placed(Placement.RULER)
                .gap("index tip", 0)
                .gap("middle tip", 0)
                .gap("ring tip", 0)
                .score(10);
        visit.mode(Mode.PASSIVE)
                .placed(Placement.DORSAL)
                .joint("MP", 66, 14)
                .joint("IP", 90, 58)
                .mode(Mode.ACTIVE);
    }

    private static void right(VisitScript visit, int mpFlexion, int mpBeyond, int ipFlexion, int ipBeyond) {
        visit.hand(Side.RIGHT).mode(Mode.ACTIVE).placed(Placement.DORSAL);
        visit.joint("MP", mpFlexion, mpBeyond).joint("IP", ipFlexion, ipBeyond);
        visit.angle("CMC", Motion.RADIAL_ABDUCTION, 40 + (mpFlexion - 30) / 2);
        visit.angle("CMC", Motion.PALMAR_ABDUCTION, 42 + (mpFlexion - 30) / 3).placed(Placement.RULER);
    }

    private static void passiveNotAllowed(VisitScript visit) {
        visit.mode(Mode.PASSIVE).placed(Placement.UNSTATED);
        visit.notTested("IP", Motion.FLEXION, NotTestedReason.PROTOCOL)
                .notTested("MP", Motion.FLEXION, NotTestedReason.PROTOCOL)
                .mode(Mode.ACTIVE);
    }

    private static Finding veryMobile() {
        return new Finding(
                "limit.high",
                Severity.ASK,
                "IP hyperextension of 55 degrees is above 50; healthy thumbs were seen up to 45.",
                List.of(
                        new LabelledNumber("heard", "55", "degrees"),
                        new LabelledNumber("limit", "50", "degrees"),
                        new LabelledNumber("seen up to", "45", "degrees")),
                Optional.of(Extension.hyperextension("15")));
    }
}
