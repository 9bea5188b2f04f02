package org.arcsay.review;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import org.arcsay.model.Entry;
import org.arcsay.model.Measure;
import org.arcsay.model.Visit;

/** What a reviewer can choose from: the given measures, and any that the visit holds beyond them. */
final class MeasureChoices {
    private MeasureChoices() {}

    static List<Measure> of(List<Measure> known, Visit visit) {
        Set<Measure> all = new LinkedHashSet<>(known);
        visit.entries().stream().map(Entry::reading).forEach(reading -> all.add(reading.measure()));
        return new ArrayList<>(all);
    }
}
