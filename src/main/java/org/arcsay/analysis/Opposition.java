package org.arcsay.analysis;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.arcsay.model.Distance;
import org.arcsay.model.LengthUnit;
import org.arcsay.model.Measure;
import org.arcsay.model.Mode;
import org.arcsay.model.Motion;
import org.arcsay.model.Reading;
import org.arcsay.model.Side;
import org.arcsay.model.Site;
import org.arcsay.model.Slot;
import org.arcsay.model.Value;
import org.arcsay.model.Visit;

/**
 * The opposition of one thumb: remaining distances to the targets in one unit, the score, and where the two disagree.
 *
 * @param side the hand
 * @param mode active or passive
 * @param gaps the distances, in the order of the hand
 * @param score the score, if taken
 * @param disagreements targets that the score says are reached and the ruler says are not, or the other way round
 */
public record Opposition(
        Side side, Mode mode, List<TipGap> gaps, Optional<Value.Score> score, List<Disagreement> disagreements) {
    public Opposition {
        gaps = List.copyOf(gaps);
        disagreements = List.copyOf(disagreements);
    }

    /**
     * A distance from the thumb tip.
     *
     * @param target where to
     * @param distance in the unit of the whole list
     * @param said the reading as it was said
     */
    public record TipGap(Site target, Distance distance, Reading said) {}

    /**
     * A score that does not fit a gap. This is a question and no error: a tip may reach a later target past a missed one.
     *
     * @param target the target
     * @param stage the score from which that target has been reached
     * @param score the score that was said
     * @param gap the distance that was said
     */
    public record Disagreement(Site target, int stage, int score, Distance gap) {
        /** Compares a score with a gap. */
        public static Optional<Disagreement> between(Site target, int score, Distance gap) {
            return OppositionTargets.standard()
                    .stage(target)
                    .filter(stage -> score >= stage && gap.amount().signum() > 0)
                    .map(stage -> new Disagreement(target, stage, score, gap));
        }

        public String words() {
            return "an opposition score of " + score + " means that the thumb reached the " + target.code() + " (stage "
                    + stage + "), but the gap there is " + gap;
        }
    }

    /** Everything about opposition in a visit, with distances in the unit asked for. */
    public static Opposition of(Visit visit, Side side, Mode mode, LengthUnit unit) {
        List<TipGap> gaps = OppositionTargets.standard().targets().stream()
                .map(OppositionTargets.Target::site)
                .flatMap(site ->
                        Readings.last(visit, new Slot(side, new Measure(site, Motion.OPPOSITION_GAP), mode)).stream())
                .map(reading -> gap(reading, unit))
                .toList();
        Optional<Value.Score> score = Readings.last(
                        visit, new Slot(side, Measure.of("thumb", Motion.OPPOSITION_SCORE), mode))
                .map(reading -> (Value.Score) reading.value());
        return new Opposition(side, mode, gaps, score, disagreements(gaps, score));
    }

    /** The largest gap to the tip of a finger; empty where none was measured. */
    public Optional<Distance> widestToFinger() {
        return gaps.stream()
                .filter(gap -> gap.target().code().endsWith(" tip"))
                .map(TipGap::distance)
                .max(Comparator.comparing(Distance::millimetres));
    }

    private static TipGap gap(Reading reading, LengthUnit unit) {
        Distance said = ((Value.Gap) reading.value()).distance();
        return new TipGap(reading.measure().site(), said.in(unit), reading);
    }

    private static List<Disagreement> disagreements(List<TipGap> gaps, Optional<Value.Score> score) {
        return score.stream()
                .flatMap(
                        points -> gaps.stream()
                                .flatMap(gap -> Disagreement.between(
                                        gap.target(),
                                        points.points(),
                                        ((Value.Gap) gap.said().value()).distance())
                                        .stream()))
                .toList();
    }
}
