package org.arcsay.analysis;

import java.util.List;
import org.arcsay.model.Measure;
import org.arcsay.model.Mode;
import org.arcsay.model.Side;
import org.arcsay.model.Slot;
import org.arcsay.model.Visit;
import org.arcsay.tables.Mark;
import org.arcsay.tables.Provenance;

/**
 * What a series of one hand holds, in the order that is proposed; any order may be measured.
 *
 * @param id stable id, such as "thumb-full"
 * @param title for headings
 * @param steps the places of the series
 * @param provenance where the series comes from
 */
public record SeriesPlan(String id, String title, List<Step> steps, Provenance provenance) {
    public SeriesPlan {
        steps = List.copyOf(steps);
    }

    /**
     * One place of a series.
     *
     * @param measure the measure
     * @param mode active or passive
     * @param optional whether the series is complete without it
     */
    public record Step(Measure measure, Mode mode, boolean optional) {
        public Slot on(Side side) {
            return new Slot(side, measure, mode);
        }
    }

    /** What was measured of that hand in an earlier visit, in that order: the series of a re-check. */
    public static SeriesPlan recheck(Visit earlier, Side side) {
        List<Step> steps = earlier.counting().stream()
                .map(entry -> entry.reading().slot())
                .filter(slot ->
                        slot.side() == side && Readings.last(earlier, slot).isPresent())
                .distinct()
                .map(slot -> new Step(slot.measure(), slot.mode(), false))
                .toList();
        return new SeriesPlan(
                "recheck", "Re-check", steps, new Provenance(Mark.OUR_DEFAULT, "what was measured at that visit"));
    }

    /** The same series without the steps of a mode, such as passive ones that the protocol forbids. */
    public SeriesPlan without(Mode mode) {
        return new SeriesPlan(
                id, title, steps.stream().filter(step -> step.mode() != mode).toList(), provenance);
    }
}
