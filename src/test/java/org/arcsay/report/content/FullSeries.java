package org.arcsay.report.content;

import java.time.OffsetDateTime;
import java.util.List;
import java.util.stream.IntStream;
import org.arcsay.analysis.SeriesPlan;
import org.arcsay.analysis.SeriesPlans;
import org.arcsay.model.Distance;
import org.arcsay.model.LengthUnit;
import org.arcsay.model.Measure;
import org.arcsay.model.Remark;
import org.arcsay.model.Side;
import org.arcsay.model.Value;
import org.arcsay.model.Value.Angle;
import org.arcsay.model.Value.Extension;
import org.arcsay.model.Value.Gap;
import org.arcsay.model.Value.Score;
import org.arcsay.model.Value.Span;

/** An invented patient of whom every step of the full thumb series is measured on both hands, once a week. */
public final class FullSeries {
    private static final OffsetDateTime FIRST = OffsetDateTime.parse("2022-01-10T08:00:00+01:00");

    private FullSeries() {}

    /** So many visits, oldest first, every reading confirmed. */
    public static List<VisitRecord> visits(int number) {
        return IntStream.rangeClosed(1, number).mapToObj(FullSeries::visit).toList();
    }

    private static VisitRecord visit(int id) {
        VisitScript script = new VisitScript(id, "demo-08", FIRST.plusWeeks(id).toString());
        for (Side side : Side.values()) {
            script.hand(side);
            for (SeriesPlan.Step step : SeriesPlans.standard().usual().steps()) {
                script.mode(step.mode()).take(step.measure(), value(step.measure(), id));
            }
            script.remark(new Remark.Note("Schwellung über dem Daumenballen zurückgegangen, Übungen gut verträglich"));
        }
        return script.end().confirmAll().record();
    }

    /** Slowly better, with a little of up and down. */
    private static Value value(Measure measure, int visit) {
        int gain = Math.min(visit, 150) / 5 + visit % 3;
        return switch (measure.dimension()) {
            case ANGLE -> Angle.of(25 + gain);
            case EXTENSION -> Extension.deficit(Integer.toString(Math.max(1, 20 - gain)));
            case SCORE -> new Score(Math.min(10, 2 + gain / 4));
            case SPAN -> new Span(millimetres(50 + gain));
            case GAP -> new Gap(millimetres(Math.max(0, 40 - gain)));
        };
    }

    private static Distance millimetres(int number) {
        return Distance.of(Integer.toString(number), LengthUnit.MILLIMETRE);
    }
}
