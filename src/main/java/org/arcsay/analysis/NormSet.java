package org.arcsay.analysis;

import java.util.List;
import java.util.Optional;
import org.arcsay.model.Measure;
import org.arcsay.model.Mode;
import org.arcsay.tables.MeasurePattern;

/**
 * Normative values that belong together; a clinic chooses one and the report names it.
 *
 * @param id stable id, such as "barakat-2013"
 * @param title for headings
 * @param norms its values
 */
public record NormSet(String id, String title, List<Norm> norms) {
    public NormSet {
        norms = List.copyOf(norms);
    }

    /** The value for a measure in a mode, if this set has one. */
    public Optional<Norm> find(Measure measure, Mode mode) {
        return MeasurePattern.closest(norms.stream(), Norm::pattern, measure, mode);
    }

    /** Whether any value of this set is only remembered. */
    public boolean hasUnverified() {
        return norms.stream().anyMatch(norm -> !norm.provenance().mark().citable());
    }

    /** The title, with a label where values are not verified. */
    public String label() {
        boolean all = norms.stream().noneMatch(norm -> norm.provenance().mark().citable());
        if (all) {
            return title + " (from memory, not verified)";
        }
        return hasUnverified() ? title + " (partly from memory, not verified)" : title;
    }
}
