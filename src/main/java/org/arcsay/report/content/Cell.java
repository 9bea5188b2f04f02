package org.arcsay.report.content;

import java.util.List;
import java.util.stream.Collectors;
import org.arcsay.analysis.Comparison;
import org.arcsay.model.Entry;
import org.arcsay.model.EntryStatus;

/**
 * What one visit holds for one slot of the series.
 *
 * @param entries the counting entries in the order in which they were taken; more than one when a motion was repeated
 * @param comparison the last of them beside the other hand and earlier visits
 */
public record Cell(List<Entry> entries, Comparison comparison) {
    public Cell {
        entries = List.copyOf(entries);
    }

    public boolean isEmpty() {
        return entries.isEmpty();
    }

    /** The values in plain words, repeats separated by semicolons; empty when nothing was taken. */
    public String words() {
        return entries.stream().map(entry -> entry.reading().value().words()).collect(Collectors.joining("; "));
    }

    /** The values as briefly as can be. */
    public String brief() {
        return entries.stream()
                .map(entry -> Brief.value(entry.reading().value()))
                .collect(Collectors.joining("; "));
    }

    public boolean isPreliminary() {
        return entries.stream().anyMatch(entry -> entry.status() != EntryStatus.CONFIRMED);
    }
}
