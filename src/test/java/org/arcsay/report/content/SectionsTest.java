package org.arcsay.report.content;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.OffsetDateTime;
import java.util.List;
import org.arcsay.analysis.Customs;
import org.arcsay.analysis.Notation;
import org.arcsay.model.ClinicSettings;
import org.arcsay.model.Measure;
import org.arcsay.model.Mode;
import org.arcsay.model.Motion;
import org.arcsay.model.PatientProtocol;
import org.arcsay.model.Side;
import org.arcsay.model.Value;
import org.arcsay.model.Value.NotTestedReason;
import org.junit.jupiter.api.Test;

/** What reports say beyond the table of the series. All numbers are checked by hand. */
class SectionsTest {
    private static final Measure IP_FLEXION = Measure.of("IP", Motion.FLEXION);

    private static VisitScript script(int visit) {
        return new VisitScript(visit, "T-7", "2026-0" + visit + "-05T09:00:00+01:00").hand(Side.RIGHT);
    }

    private static Report report(Customs customs, VisitRecord... visits) {
        return Report.of(new ReportSource(
                List.of(visits),
                ClinicSettings.defaults(),
                customs,
                OffsetDateTime.parse("2026-12-01T08:00:00+01:00"),
                "test"));
    }

    private static List<String> section(Report report, String title) {
        return report.sections().stream()
                .filter(section -> section.title().startsWith(title))
                .flatMap(section -> section.facts().stream())
                .map(Section.Fact::sentence)
                .toList();
    }

    private static VisitRecord flexion(int visit, int degrees) {
        return script(visit).angle("IP", Motion.FLEXION, degrees).confirmAll().record();
    }

    @Test
    void firstVisitAndBestSoFarAreNamedWhereTheyAreNotTheLastVisit() {
        Report report = report(Customs.usual(), flexion(1, 40), flexion(2, 60), flexion(3, 50), flexion(4, 52));
        assertThat(section(report, "Since the first"))
                .containsExactly("right IP flexion, active: first, 2026-01-05: 12 degrees more than 40 degrees, beyond"
                        + " measurement error (10 degrees); best so far, 2026-02-05: 8 degrees less than 60 degrees, within"
                        + " measurement error (10 degrees)");
        assertThat(section(report(Customs.usual(), flexion(1, 40), flexion(2, 52)), "Since the first"))
                .as("the table shows the last visit already")
                .isEmpty();
        assertThat(section(report(Customs.usual(), flexion(1, 60), flexion(2, 40), flexion(3, 52)), "Since the first"))
                .containsExactly("right IP flexion, active: first and best so far, 2026-01-05: 8 degrees less than 60"
                        + " degrees, within measurement error (10 degrees)");
    }

    private static VisitRecord joints(int visit, int mp, int mpExtension, int ip, int ipExtension) {
        return script(visit)
                .joint("MP", mp, mpExtension)
                .joint("IP", ip, ipExtension)
                .confirmAll()
                .record();
    }

    /** 50 - 10 + 60 - 20 = 80; 40 + 40 - 30 = 50; 55 + 70 - 15 = 110; 45 + 60 - 10 = 95. */
    @Test
    void totalsAreComparedWithLastFirstAndBestVisit() {
        Report report = report(
                Customs.usual(),
                joints(1, 40, 0, 40, -30),
                joints(2, 55, 0, 70, -15),
                joints(3, 50, -10, 60, -20),
                joints(4, 45, 5, 60, -10));
        assertThat(report.totals().get(0).words())
                .startsWith("right TAM (thumb total motion, active): 95 degrees, 67.9 %");
        assertThat(report.totals().get(0).changes())
                .containsExactly(
                        "since 2026-03-05 (last complete): 15 degrees more than 80 degrees, within measurement"
                                + " error (20 degrees)",
                        "since 2026-01-05 (first complete): 45 degrees more than 50 degrees, beyond measurement"
                                + " error (20 degrees)",
                        "since 2026-02-05 (best so far): 15 degrees less than 110 degrees, within"
                                + " measurement error (20 degrees)");
    }

    private static VisitRecord hand(int visit, Side side, int mp, int ip) {
        return script(visit)
                .hand(side)
                .joint("MP", mp, 0)
                .joint("IP", ip, 0)
                .confirmAll()
                .record();
    }

    /** 50 + 45 = 95 beside 60 + 80 = 140: 45 less, sqrt(4 * 10^2) = 20, 95 / 140 = 67.9 %; the oldest left visit does not count. */
    @Test
    void theOtherHandOfAnEarlierVisitIsComparedAndItsDateGiven() {
        Report report = report(
                Customs.usual(), hand(1, Side.LEFT, 20, 20), hand(2, Side.LEFT, 60, 80), hand(3, Side.RIGHT, 50, 45));
        assertThat(section(report, "Beside the other hand"))
                .containsExactly(
                        "right IP flexion, active, 2026-02-05: 35 degrees less than 80 degrees, beyond measurement error"
                                + " (10 degrees)",
                        "right IP extension, active, 2026-02-05: the same, reaches neutral, 0 degrees, within"
                                + " measurement error (10 degrees)",
                        "right MP flexion, active, 2026-02-05: 10 degrees less than 60 degrees, within measurement error"
                                + " (10 degrees)",
                        "right MP extension, active, 2026-02-05: the same, reaches neutral, 0 degrees, within"
                                + " measurement error (10 degrees)",
                        "right TAM (thumb total motion, active), 2026-02-05: 45 degrees less than 140 degrees, beyond"
                                + " measurement error (20 degrees), 67.9 % of 140 degrees");
        VisitRecord both = script(3)
                .hand(Side.LEFT)
                .angle("IP", Motion.FLEXION, 80)
                .hand(Side.RIGHT)
                .angle("IP", Motion.FLEXION, 75)
                .confirmAll()
                .record();
        assertThat(section(report(Customs.usual(), hand(2, Side.LEFT, 60, 60), both), "Beside the other hand"))
                .as("measured at this visit, the table shows it")
                .isEmpty();
    }

    @Test
    void severalTrialsAreShownWithMeanAndRange() {
        VisitRecord visit = script(1)
                .angle("IP", Motion.FLEXION, 55)
                .angle("IP", Motion.FLEXION, 60)
                .confirmAll()
                .record();
        assertThat(section(report(Customs.usual(), visit), "Several trials"))
                .containsExactly(
                        "right IP flexion, active: 2 trials, mean 57.5 degrees, range 5 degrees; the last one is"
                                + " compared");
    }

    @Test
    void arcsAreWrittenInTheNotationOfTheClinicWhichIsNamed() {
        VisitRecord visit =
                script(1).joint("MP", 55, 10).joint("IP", 75, -10).confirmAll().record();
        Customs usual = Customs.usual();
        Report report =
                report(new Customs(usual.norms(), usual.yardstick(), Notation.NEUTRAL_ZERO_FLEXION_FIRST), visit);
        assertThat(report.sections()).extracting(Section::title).contains("Joints, neutral-zero, flexion/extension");
        assertThat(section(report, "Joints")).containsExactly("right IP active: 75-10-0", "right MP active: 55-0-10");
        assertThat(section(report(usual, visit), "Joints"))
                .containsExactly(
                        "right IP active: lacks 10 degrees, flexes to 75 degrees",
                        "right MP active: hyperextends 10 degrees, flexes to 55 degrees");
    }

    @Test
    void oppositionIsInOneUnitAndSaysWhetherScoreAndGapsAgree() {
        VisitRecord fits = script(1)
                .gap("index tip", 0)
                .gap("ring tip", 12)
                .score(4)
                .confirmAll()
                .record();
        assertThat(section(report(Customs.usual(), fits), "Opposition"))
                .containsExactly(
                        "right active, gaps index tip 0 mm, ring tip 12 mm; score 4 of 10, no gap contradicts it;"
                                + " widest to a finger tip 12 mm, less than 1 inch (2.5 cm) (bands of 38 CFR 4.71a, code"
                                + " 5228)");
        VisitRecord contradicts = script(1)
                .gap("index tip", 0)
                .gap("ring tip", 12)
                .score(5)
                .confirmAll()
                .record();
        assertThat(section(report(Customs.usual(), contradicts), "Opposition").get(0))
                .contains(
                        "score 5 of 10; an opposition score of 5 means that the thumb reached the ring tip (stage 5), but"
                                + " the gap there is 12 mm")
                .doesNotContain("no gap contradicts");
    }

    @Test
    void theSeriesSaysWhatIsMissingAndWhyItWasNotTested() {
        VisitRecord visit = script(1)
                .gap("index tip", 0)
                .notTested("middle tip", Motion.OPPOSITION_GAP, NotTestedReason.PAIN)
                .notTested("ring tip", Motion.OPPOSITION_GAP, NotTestedReason.UNSTATED)
                .score(3)
                .confirmAll()
                .record()
                .following("opposition");
        assertThat(section(report(Customs.usual(), visit), "Series")).first().satisfies(words -> assertThat(words)
                .endsWith(": 3 of 6 settled; missing: opposition to little tip active, opposition to little base"
                        + " active; not tested without a reason: opposition to ring tip active; not tested:"
                        + " opposition to middle tip active because of pain"));
    }

    @Test
    void underAProtocolThatForbidsPassiveMotionNothingPassiveIsMissing() {
        VisitRecord visit =
                script(1).angle("IP", Motion.FLEXION, 50).confirmAll().record().following("thumb-full");
        assertThat(section(report(Customs.usual(), visit), "Series").get(0)).contains("IP flexion passive");
        VisitRecord protectedVisit = visit.under(PatientProtocol.parse("no passive"));
        assertThat(section(report(Customs.usual(), protectedVisit), "Series").get(0))
                .doesNotContain("passive");
        assertThat(section(report(Customs.usual(), protectedVisit), Section.PROTOCOL))
                .containsExactly("passive motion not permitted");
    }

    @Test
    void contractureAndLagStandWithTheJoint() {
        VisitRecord visit = script(1)
                .extension("IP", -25)
                .mode(Mode.PASSIVE)
                .extension("IP", -15)
                .confirmAll()
                .record();
        assertThat(section(report(Customs.usual(), visit), "Joints"))
                .containsExactly(
                        "right IP: passive deficit (contracture) 15 degrees; active deficit (lag) 25 degrees, 10"
                                + " degrees more than passive");
    }

    @Test
    void everyFigureOfMeasurementErrorIsNamedWithItsSource() {
        Report report = report(Customs.usual(), flexion(1, 40));
        assertThat(report.errors())
                .hasSize(2)
                .anySatisfy(words -> assertThat(words)
                        .startsWith(
                                "IP flexion, active: same rater, SEM 1.8, MDC90 4.2, MDC95 5.0 degrees; our default: "))
                .anySatisfy(
                        words -> assertThat(words)
                                .startsWith(
                                        "IP flexion, active: different raters, SEM 3.6, MDC90 8.4, MDC95 10.0 degrees; our default: "));
    }

    @Test
    void aPageAboutOneHandLeavesOutTheOther() {
        VisitRecord visit = script(1)
                .joint("IP", 75, -10)
                .hand(Side.LEFT)
                .joint("IP", 80, 5)
                .take(IP_FLEXION, new Value.NotTested(NotTestedReason.PAIN))
                .confirmAll()
                .record()
                .under(PatientProtocol.parse("no resisted"));
        Section joints = report(Customs.usual(), visit).sections().stream()
                .filter(section -> section.title().startsWith("Joints"))
                .findFirst()
                .orElseThrow();
        assertThat(joints.about(Side.LEFT)).containsExactly("IP active: hyperextends 5 degrees, flexes to 80 degrees");
        assertThat(joints.about(Side.RIGHT)).containsExactly("IP active: lacks 10 degrees, flexes to 75 degrees");
    }
}
