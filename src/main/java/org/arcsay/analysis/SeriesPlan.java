package org.arcsay.analysis;

import java.util.List;
import java.util.Optional;
import org.arcsay.model.Measure;
import org.arcsay.model.Mode;
import org.arcsay.model.Reading;
import org.arcsay.model.Side;
import org.arcsay.model.Slot;
import org.arcsay.model.Value;
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
    private static final int HIGHEST_SCORE = 10;
    private static final Provenance RECHECKED = new Provenance(Mark.OUR_DEFAULT, "what was not normal at that visit");

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

    /**
     * A series of a clinic's own.
     *
     * @param source the file that it stands in
     */
    public static SeriesPlan own(String id, String title, List<Step> steps, String source) {
        return new SeriesPlan(id, title, steps, new Provenance(Mark.OUR_DEFAULT, source));
    }

    /** Stands for {@link #recheck} until it is known of which visit. */
    public static final SeriesPlan RECHECK =
            new SeriesPlan("recheck", "Re-check: only what was not normal last time", List.of(), RECHECKED);

    /**
     * What was not normal in an earlier visit, in that order. Normal is what lies in the range of the norm set, or reaches
     * its mean where it gives no range; where it gives neither, contact, the highest score and no deficit are. In doubt it is measured again.
     *
     * @param side one hand, or empty for what was not normal of either
     */
    public static SeriesPlan recheck(Visit earlier, Optional<Side> side, NormSet norms) {
        List<Step> steps = earlier.counting().stream()
                .map(entry -> entry.reading().slot())
                .filter(slot -> side.isEmpty() || side.get() == slot.side())
                .filter(slot -> Readings.last(earlier, slot)
                        .filter(reading -> !isNormal(reading, norms))
                        .isPresent())
                .map(slot -> new Step(slot.measure(), slot.mode(), false))
                .distinct()
                .toList();
        return new SeriesPlan(RECHECK.id, "Re-check", steps, RECHECKED);
    }

    private static boolean isNormal(Reading reading, NormSet norms) {
        Value value = reading.value();
        Optional<Amount> amount = Amount.of(value);
        Optional<Norm> norm = norms.find(reading.measure(), reading.mode());
        if (norm.isEmpty() || amount.isEmpty()) {
            return isFull(value);
        }
        return norm.get()
                .inRange(amount.get())
                .orElseGet(() -> amount.get().number().compareTo(norm.get().mean()) >= 0);
    }

    private static boolean isFull(Value value) {
        if (value instanceof Value.Gap gap) {
            return gap.distance().millimetres().signum() == 0;
        }
        return value instanceof Value.Score score
                ? score.points() == HIGHEST_SCORE
                : value instanceof Value.Extension extension
                        && extension.beyondNeutral().signum() >= 0;
    }

    /** The same series without the steps of a mode, such as passive ones that the protocol forbids. */
    public SeriesPlan without(Mode mode) {
        return new SeriesPlan(
                id, title, steps.stream().filter(step -> step.mode() != mode).toList(), provenance);
    }
}
