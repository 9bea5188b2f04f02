package org.arcsay.review;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.arcsay.model.Entry;
import org.arcsay.model.Measure;
import org.arcsay.model.Mode;
import org.arcsay.model.Placement;
import org.arcsay.model.Reading;
import org.arcsay.model.Remark;
import org.arcsay.model.Remark.Feel;
import org.arcsay.model.Remark.PainPlace;
import org.arcsay.model.Side;

/**
 * A correction or a new reading while it is being typed; anything may be missing or wrong.
 *
 * @param entry number of the entry to correct, or {@link #NEW} for a missed reading
 * @param side the hand, once chosen
 * @param measure what is measured, once chosen
 * @param mode active or passive, once chosen
 * @param value the value as typed
 * @param placement where the instrument lay
 * @param remarks remarks that stay
 * @param pain pain to add
 * @param painScore its score as typed, or empty
 * @param feel a quality to add
 * @param note a note to add, or empty
 * @param why the reason for the correction, or empty
 */
public record Draft(
        int entry,
        Optional<Side> side,
        Optional<Measure> measure,
        Optional<Mode> mode,
        String value,
        Placement placement,
        List<Remark> remarks,
        Optional<PainPlace> pain,
        String painScore,
        Optional<Feel> feel,
        String note,
        String why) {
    /** Stands for "no entry yet". */
    public static final int NEW = 0;

    public Draft {
        remarks = List.copyOf(remarks);
    }

    /** An empty form. Side and mode start unchosen, so that neither is taken over by accident. */
    public static Draft empty() {
        return new Draft(
                NEW,
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                "",
                Placement.UNSTATED,
                List.of(),
                Optional.empty(),
                "",
                Optional.empty(),
                "",
                "");
    }

    /** A form filled with an entry as it stands. */
    public static Draft of(Entry entry) {
        Reading reading = entry.reading();
        return new Draft(
                entry.number(),
                Optional.of(reading.side()),
                Optional.of(reading.measure()),
                Optional.of(reading.mode()),
                TypedValue.text(reading.value()),
                reading.placement(),
                entry.remarks(),
                Optional.empty(),
                "",
                Optional.empty(),
                "",
                "");
    }

    public boolean isNew() {
        return entry == NEW;
    }

    public Draft withSide(Side other) {
        return new Draft(
                entry, Optional.of(other), measure, mode, value, placement, remarks, pain, painScore, feel, note, why);
    }

    public Draft withMeasure(Measure other) {
        return new Draft(
                entry, side, Optional.of(other), mode, value, placement, remarks, pain, painScore, feel, note, why);
    }

    public Draft withMode(Mode other) {
        return new Draft(
                entry, side, measure, Optional.of(other), value, placement, remarks, pain, painScore, feel, note, why);
    }

    public Draft withValue(String other) {
        return new Draft(entry, side, measure, mode, other, placement, remarks, pain, painScore, feel, note, why);
    }

    public Draft withPlacement(Placement other) {
        return new Draft(entry, side, measure, mode, value, other, remarks, pain, painScore, feel, note, why);
    }

    public Draft withoutRemark(Remark remark) {
        List<Remark> left = new ArrayList<>(remarks);
        left.remove(remark);
        return new Draft(entry, side, measure, mode, value, placement, left, pain, painScore, feel, note, why);
    }

    public Draft withPain(Optional<PainPlace> place, String score) {
        return new Draft(entry, side, measure, mode, value, placement, remarks, place, score, feel, note, why);
    }

    public Draft withFeel(Optional<Feel> other) {
        return new Draft(entry, side, measure, mode, value, placement, remarks, pain, painScore, other, note, why);
    }

    public Draft withNote(String other) {
        return new Draft(entry, side, measure, mode, value, placement, remarks, pain, painScore, feel, other, why);
    }

    public Draft withWhy(String other) {
        return new Draft(entry, side, measure, mode, value, placement, remarks, pain, painScore, feel, note, other);
    }
}
