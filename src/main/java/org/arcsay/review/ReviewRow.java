package org.arcsay.review;

import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import org.arcsay.model.Entry;
import org.arcsay.model.Finding;
import org.arcsay.model.Heard;
import org.arcsay.model.Placement;
import org.arcsay.model.Reading;
import org.arcsay.model.Remark;

/**
 * One reading as the reviewer sees it.
 *
 * @param entry the entry
 * @param state where it stands
 * @param seen whether its details have been shown in this review
 * @param drafted whether a half-typed correction of it is kept
 * @param history its life so far, earliest first
 */
public record ReviewRow(Entry entry, RowState state, boolean seen, boolean drafted, List<HistoryLine> history) {
    public ReviewRow {
        history = List.copyOf(history);
    }

    public int number() {
        return entry.number();
    }

    /** Side, measure and mode, such as "Right IP flexion, active". */
    public String title() {
        return Sentences.capital(entry.reading().slot().words());
    }

    /** The value in words with its unit. */
    public String value() {
        return entry.reading().value().words();
    }

    /** What was heard or typed, in quotation marks, and how sure the recogniser was. */
    public String heard() {
        Heard heard = entry.heard();
        String quoted = "\u201c" + heard.words() + "\u201d";
        if (heard.source() == Heard.Source.TYPED) {
            return quoted + " (typed)";
        }
        return quoted + String.format(Locale.ROOT, " (by voice, least sure word %.0f %%)", heard.confidence() * 100);
    }

    /** The whole reading in words, with placement and remarks. */
    public String understood() {
        Reading reading = entry.reading();
        String placement = reading.placement() == Placement.UNSTATED ? "" : ", measured " + placed(reading.placement());
        String remarks = entry.remarks().stream()
                .map(Remark::words)
                .map(words -> "; " + words)
                .collect(Collectors.joining());
        return Sentences.capital(reading.words()) + placement + remarks;
    }

    public List<Finding> findings() {
        return entry.findings();
    }

    /** Everything about the row in one sentence, for a screen reader. */
    public String spoken() {
        return title() + ": " + value() + ". " + state.words() + (drafted ? ". A correction is half typed" : "") + ".";
    }

    private static String placed(Placement placement) {
        return placement == Placement.RULER ? "with a ruler" : "on the " + placement.word() + " side";
    }
}
