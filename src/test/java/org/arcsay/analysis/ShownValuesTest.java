package org.arcsay.analysis;

import static org.arcsay.analysis.Visits.START;
import static org.arcsay.analysis.Visits.flexion;
import static org.arcsay.analysis.Visits.gap;
import static org.arcsay.analysis.Visits.lacks;
import static org.arcsay.analysis.Visits.neutral;
import static org.arcsay.analysis.Visits.reading;
import static org.arcsay.analysis.Visits.visit;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import org.arcsay.analysis.Comparison.Yardstick;
import org.arcsay.model.Finding;
import org.arcsay.model.JournalEvent;
import org.arcsay.model.LengthUnit;
import org.arcsay.model.Measure;
import org.arcsay.model.Mode;
import org.arcsay.model.Motion;
import org.arcsay.model.Reading;
import org.arcsay.model.Severity;
import org.arcsay.model.Side;
import org.arcsay.model.Value;
import org.arcsay.model.Visit;
import org.arcsay.tables.TableException;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** What is computed, in the words in which it is shown, and the figures of a clinic. */
class ShownValuesTest {
    private static final String HEAD = "measure\tmode\trater\tbasis\tamount\tunit\tmark\tsource\n";

    private static MeasurementError table(String... lines) {
        return MeasurementError.read("ours", HEAD + String.join("\n", lines) + "\n");
    }

    @Test
    void aClinicsLineComesBeforeEveryShippedOneAndTheRestHolds() {
        MeasurementError own = table("*:FLEXION\tany\tsame\tSEM\t1\tdegrees\tour default\tclinic");
        Measure cmc = Measure.of("CMC", Motion.FLEXION);
        ErrorFigure figure = own.of(cmc, Mode.ACTIVE, Rater.SAME).orElseThrow();
        assertThat(figure.sem()).isEqualByComparingTo("1");
        assertThat(figure.mdc95().doubleValue()).isBetween(2.77, 2.78);
        assertThat(figure.mdc90().doubleValue()).isBetween(2.32, 2.33);
        assertThat(own.of(cmc, Mode.ACTIVE, Rater.DIFFERENT))
                .isEqualTo(MeasurementError.standard().of(cmc, Mode.ACTIVE, Rater.DIFFERENT));
        assertThat(own.isOwn()).isTrue();
        assertThat(own.name()).isEqualTo("ours");
        assertThat(MeasurementError.standard().isOwn()).isFalse();
        assertThat(own.lines()).hasSize(MeasurementError.standard().lines().size() + 1);
    }

    @ParameterizedTest
    @ValueSource(strings = {"0", "-1"})
    void anErrorOfNothingIsRefusedWithItsLine(String amount) {
        assertThatThrownBy(() -> table("*:FLEXION\tany\tsame\tSEM\t" + amount + "\tdegrees\tour default\tclinic"))
                .isInstanceOf(TableException.class)
                .hasMessageContaining("Line 2")
                .hasMessageContaining("above 0");
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "*:FLEXION\tany\tsame\tSEM\t1\tdegrees\t\tclinic",
                "*:FLEXION\tany\tsame\tSEM\t1\tdegrees\tour default\t",
                "*:FLEXION\tany\tsame\tSEM\t1\tdegrees\tguessed\tclinic",
                "*:FLEXION\tany\tnobody\tSEM\t1\tdegrees\tour default\tclinic",
                "*:FLEXION\tany\tsame\tSD\t1\tdegrees\tour default\tclinic",
                "*:FLEXION\tany\tsame\tSEM\t1\tmiles\tour default\tclinic",
            })
    void aLineThatCannotBeUsedIsRefusedAndANumberNeedsItsMarkAndSource(String line) {
        assertThatThrownBy(() -> table(line)).isInstanceOf(TableException.class).hasMessageContaining("Line 2");
    }

    @Test
    void normsAreWrittenWithTheSideOfNeutral() {
        NormSets sets = NormSets.read(
                "ours",
                "set\ttitle\tmeasure\tmode\tmean\tsd\tlow\thigh\tunit\tsample\tmark\tsource\n"
                        + "c\tC\tIP:FLEXION\tany\t80\t-\t-\t-\tdegrees\tn\tour default\ts\n"
                        + "c\tC\tMP:FLEXION\tany\t55\t5\t40\t70\tdegrees\tn\tour default\ts\n"
                        + "c\tC\tIP:EXTENSION\tany\t12\t-\t0\t45\tdegrees\tn\tour default\ts\n"
                        + "c\tC\tMP:EXTENSION\tany\t-5\t-\t-32\t58\tdegrees\tn\tour default\ts\n"
                        + "c\tC\tCMC:EXTENSION\tany\t0\t-\t-\t10\tdegrees\tn\tour default\ts\n");
        assertThat(sets.all().get(0).norms().stream().map(Norm::brief))
                .containsExactly(
                        "80",
                        "55 (40 to 70)",
                        "12 (0 to 45 beyond neutral)",
                        "5 short of neutral (32 short of neutral to 58 beyond neutral)",
                        "0");
    }

    private static Difference since(Reading now, Reading then) {
        return Comparison.of(now.slot(), visit(now), List.of(visit(1, START.minusWeeks(1), then)), Yardstick.cautious())
                .last()
                .orElseThrow();
    }

    @Test
    void differencesAreWrittenBriefly() {
        assertThat(since(flexion("IP", "60"), flexion("IP", "50")).brief()).isEqualTo("10 more");
        assertThat(since(flexion("IP", "50"), flexion("IP", "60.5")).brief()).isEqualTo("10.5 less");
        assertThat(since(flexion("IP", "50"), flexion("IP", "50")).brief()).isEqualTo("the same");
        assertThat(since(lacks("IP", "5"), lacks("IP", "20")).brief()).isEqualTo("15 straighter");
        assertThat(since(lacks("IP", "20"), neutral("IP")).brief()).isEqualTo("20 less straight");
    }

    @Test
    void trialsAreWrittenWithMeanAndRangeAndWithoutPromise() {
        Visit visit = visit(
                flexion("IP", "55"),
                reading("IP:FLEXION", new Value.NotTested(Value.NotTestedReason.PAIN)),
                flexion("IP", "60"),
                flexion("IP", "58"));
        Trials trials = Trials.of(visit, flexion("IP", "1").slot());
        assertThat(trials.count()).as("what has no number is no trial").isEqualTo(3);
        assertThat(trials.words()).isEqualTo("3 trials, mean 57.7 degrees, range 5 degrees; the last one is compared");
    }

    @Test
    void theMeanOfAnExtensionHasASideAndNoSign() {
        Visit visit = visit(lacks("IP", "20"), lacks("IP", "10"));
        assertThat(Trials.of(visit, lacks("IP", "1").slot()).words())
                .isEqualTo("2 trials, mean 15 degrees short of neutral, range 10 degrees; the last one is compared");
        Visit across = visit(Visits.hyper("IP", "12"), lacks("IP", "2"));
        assertThat(Trials.of(across, lacks("IP", "1").slot()).words())
                .isEqualTo("2 trials, mean 5 degrees beyond neutral, range 14 degrees; the last one is compared");
    }

    @Test
    void contractureAndLagAreToldApartInWords() {
        Visit visit = visit(lacks("IP", "25"), lacks("IP", "15").withMode(Mode.PASSIVE));
        assertThat(ExtensionLoss.of(
                                visit, Side.RIGHT, flexion("IP", "1").measure().site())
                        .map(ExtensionLoss::words))
                .contains(
                        "passive deficit (contracture) 15 degrees; active deficit (lag) 25 degrees, 10 degrees more than"
                                + " passive");
        Visit free = visit(lacks("IP", "25"), neutral("IP").withMode(Mode.PASSIVE));
        assertThat(ExtensionLoss.of(
                                free, Side.RIGHT, flexion("IP", "1").measure().site())
                        .map(ExtensionLoss::words))
                .contains("active deficit (lag) 25 degrees");
    }

    @ParameterizedTest
    @CsvSource({
        "NEUTRAL_ZERO_EXTENSION_FIRST, 0-10-0",
        "NEUTRAL_ZERO_FLEXION_FIRST, 0-10-0",
        "NEUTRAL_ZERO_EXTENSION_FIRST, 5-10-75",
        "NEUTRAL_ZERO_FLEXION_FIRST, 75-10-5",
        "NEUTRAL_ZERO_EXTENSION_FIRST, 10-75",
        "TWO_NUMBERS, 5-5-80",
        "TWO_NUMBERS, 80-10",
        "NEUTRAL_ZERO_FLEXION_FIRST, 75--10-0"
    })
    void whatIsNoArcInANotationIsRefused(Notation notation, String text) {
        assertThatIllegalArgumentException()
                .isThrownBy(() -> notation.parse(text))
                .withMessageContaining(text);
    }

    @Test
    void aStiffJointAtItsDeficitIsAnArcAndABitLessIsNone() {
        assertThat(Arc.of(
                        visit(lacks("IP", "30"), flexion("IP", "30")),
                        Side.RIGHT,
                        flexion("IP", "1").measure().site(),
                        Mode.ACTIVE))
                .isPresent();
        assertThat(Arc.of(
                        visit(lacks("IP", "30"), flexion("IP", "29")),
                        Side.RIGHT,
                        flexion("IP", "1").measure().site(),
                        Mode.ACTIVE))
                .isEmpty();
    }

    @Test
    void anUnusualEntryIsMarkedInTheSeriesAndANotedOneIsNot() {
        SeriesPlan plan = SeriesPlans.standard().usual();
        assertThat(words(plan, Severity.ASK)).contains("to be looked at");
        assertThat(words(plan, Severity.NOTE)).doesNotContain("to be looked at");
    }

    private static String words(SeriesPlan plan, Severity severity) {
        Visit visit = visit();
        Visit judged = visit.apply(new JournalEvent.Taken(
                START,
                1,
                flexion("IP", "99"),
                List.of(),
                List.of(new Finding("limit.high", severity, "Above the limit.", List.of(), Optional.empty())),
                visit(flexion("IP", "99")).entries().get(0).heard(),
                false,
                OptionalInt.empty(),
                "",
                ""));
        return Completeness.of(plan, judged, Side.RIGHT).done().get(0).words();
    }

    @Test
    void aTotalNeedsAScaleThatExists() {
        assertThat(Totals.standard().motions()).extracting(TotalMotion::id).contains("thumb", "index");
        assertThat(Totals.standard().motion("thumb").scale().title()).isEqualTo("Strickland and Glogovac 1980");
        assertThat(Totals.standard().motion("index").scale().title())
                .isEqualTo("American Society for Surgery of the Hand");
        assertThat(GradeScale.standard().get(0).bands())
                .extracting(GradeScale.Band::words)
                .first()
                .isEqualTo("Excellent (at least 85 %)");
    }

    @Test
    void theSameGapInAnotherUnitIsTheSame() {
        assertThat(since(gap("ring tip", "2.5", LengthUnit.CENTIMETRE), gap("ring tip", "25", LengthUnit.MILLIMETRE))
                        .brief())
                .isEqualTo("the same");
    }
}
