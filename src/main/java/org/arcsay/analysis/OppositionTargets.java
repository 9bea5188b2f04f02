package org.arcsay.analysis;

import java.math.BigDecimal;
import java.util.List;
import java.util.Optional;
import org.arcsay.model.Site;
import org.arcsay.tables.Provenance;
import org.arcsay.tables.Row;
import org.arcsay.tables.Table;

/** The targets of the thumb tip and the stages of the opposition score. */
public final class OppositionTargets {
    private static final OppositionTargets STANDARD = new OppositionTargets();

    private final List<Target> targets = Table.shipped("opposition.tsv").map(Target::read);
    private final List<Stage> stages = Table.shipped("opposition-score.tsv").map(Stage::read);

    private OppositionTargets() {}

    public static OppositionTargets standard() {
        return STANDARD;
    }

    /** The targets in the order of the hand. */
    public List<Target> targets() {
        return targets;
    }

    /** The stages from 0 to 10. */
    public List<Stage> stages() {
        return stages;
    }

    /** The place of a target in the order of the hand, from 0. */
    public Optional<Integer> order(Site site) {
        for (int i = 0; i < targets.size(); i++) {
            if (targets.get(i).site().equals(site)) {
                return Optional.of(i);
            }
        }
        return Optional.empty();
    }

    /** The stage at which a target is reached. */
    public Optional<Integer> stage(Site site) {
        return order(site).flatMap(order -> targets.get(order).stage()).map(BigDecimal::intValueExact);
    }

    /**
     * A target of the thumb tip.
     *
     * @param site the target
     * @param stage the score from which it has been reached, if the score says so
     * @param provenance where that comes from
     */
    public record Target(Site site, Optional<BigDecimal> stage, Provenance provenance) {
        static Target read(Row row) {
            return new Target(new Site(row.text("site")), row.optionalNumber("stage"), row.provenance());
        }
    }

    /**
     * A stage of the score.
     *
     * @param points 0 to 10
     * @param reaches what the thumb reaches
     * @param provenance where that comes from
     */
    public record Stage(int points, String reaches, Provenance provenance) {
        static Stage read(Row row) {
            return new Stage(row.number("points").intValueExact(), row.text("reaches"), row.provenance());
        }
    }
}
