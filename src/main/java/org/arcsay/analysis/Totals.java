package org.arcsay.analysis;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.arcsay.model.Measure;
import org.arcsay.model.Mode;
import org.arcsay.model.Motion;
import org.arcsay.model.Reading;
import org.arcsay.model.Side;
import org.arcsay.model.Site;
import org.arcsay.model.Slot;
import org.arcsay.model.Visit;
import org.arcsay.tables.Table;

/** Total motion of a visit, computed from the last reading of each slot. */
public final class Totals {
    private static final Totals STANDARD = new Totals(Table.shipped("totals.tsv"), GradeScale.standard());

    private final List<TotalMotion> motions;

    private Totals(Table table, List<GradeScale> scales) {
        this.motions = table.map(row -> TotalMotion.read(row, scales));
    }

    public static Totals standard() {
        return STANDARD;
    }

    /** Every total that is known. */
    public List<TotalMotion> motions() {
        return motions;
    }

    /**
     * @throws IllegalArgumentException when there is no total of that id
     */
    public TotalMotion motion(String id) {
        return motions.stream()
                .filter(motion -> motion.id().equals(id))
                .findFirst()
                .orElseThrow(() -> new IllegalArgumentException("no total motion is called '" + id + "'"));
    }

    /** Every total of which at least one part was measured on that side in that mode. */
    public List<Total> of(Visit visit, Side side, Mode mode) {
        return motions.stream()
                .map(motion -> of(motion, visit, side, mode))
                .filter(total ->
                        !total.flexions().isEmpty() || !total.extensions().isEmpty())
                .toList();
    }

    /** One total, complete or not. */
    public Total of(TotalMotion motion, Visit visit, Side side, Mode mode) {
        List<Reading> flexions = new ArrayList<>();
        List<Reading> extensions = new ArrayList<>();
        List<Slot> missing = new ArrayList<>();
        for (Site site : motion.sites()) {
            collect(visit, new Slot(side, new Measure(site, Motion.FLEXION), mode), flexions, missing);
            collect(visit, new Slot(side, new Measure(site, Motion.EXTENSION), mode), extensions, missing);
        }
        return new Total(motion, side, mode, flexions, extensions, missing);
    }

    private static void collect(Visit visit, Slot slot, List<Reading> found, List<Slot> missing) {
        Optional<Reading> reading = Readings.last(visit, slot);
        reading.ifPresentOrElse(found::add, () -> missing.add(slot));
    }
}
