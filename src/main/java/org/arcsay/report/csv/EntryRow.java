package org.arcsay.report.csv;

import java.time.DateTimeException;
import java.time.Duration;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import org.arcsay.model.EntryStatus;
import org.arcsay.model.Heard;
import org.arcsay.model.JournalEvent;
import org.arcsay.model.JournalEvent.Confirmed;
import org.arcsay.model.JournalEvent.Rejected;
import org.arcsay.model.JournalEvent.Released;
import org.arcsay.model.JournalEvent.Taken;
import org.arcsay.model.Measure;
import org.arcsay.model.Mode;
import org.arcsay.model.Motion;
import org.arcsay.model.Placement;
import org.arcsay.model.Reading;
import org.arcsay.model.Side;
import org.arcsay.model.Site;
import org.arcsay.model.Sites;
import org.arcsay.model.Value;
import org.arcsay.model.ValueForm;
import org.arcsay.model.Versions;
import org.arcsay.report.content.ValueParts;

/**
 * One reading of the file as journal events.
 *
 * @param row where it stands, for complaints
 * @param taken the event that made the entry
 * @param decisions what was decided about it afterwards, in the order in which that can happen
 * @param status the state that the file claims for it
 */
record EntryRow(Row row, Taken taken, List<JournalEvent> decisions, EntryStatus status) {

    /** The reading of a row; nothing when the row has complaints. */
    static Optional<EntryRow> read(Row row) {
        Optional<Integer> number = row.need(Column.ENTRY, Cells::wholeNumber);
        Optional<EntryStatus> status = row.need(Column.STATUS, t -> ValueParts.code(EntryStatus.class, t, "status"));
        Optional<Taken> taken = taken(row, number.orElse(0));
        if (number.isEmpty() || status.isEmpty() || taken.isEmpty()) {
            decisions(row, 0);
            return Optional.empty();
        }
        return Optional.of(new EntryRow(row, taken.get(), decisions(row, number.get()), status.get()));
    }

    /** When the last decision about it was made; when it was taken, if there was none. */
    OffsetDateTime settledAt() {
        return decisions.stream()
                .map(JournalEvent::at)
                .max(OffsetDateTime::compareTo)
                .orElse(taken.at());
    }

    private static Optional<Taken> taken(Row row, int number) {
        Optional<OffsetDateTime> at = row.need(Column.TAKEN_AT, OffsetDateTime::parse);
        Optional<Reading> reading = reading(row);
        var remarks = row.read(Column.REMARKS, Cells::remarks);
        var findings = row.read(Column.FINDINGS, Cells::findings);
        Optional<Heard> heard = heard(row);
        Optional<Boolean> held = row.need(Column.WAS_HELD, EntryRow::yesNo);
        Optional<Integer> replaces = row.optional(Column.REPLACES, Cells::wholeNumber);
        if (at.isEmpty() || reading.isEmpty() || remarks.isEmpty() || findings.isEmpty() || heard.isEmpty()) {
            return Optional.empty();
        }
        return held.map(waits -> new Taken(
                at.get(),
                number,
                reading.get(),
                remarks.get(),
                findings.get(),
                heard.get(),
                waits,
                replaces.map(OptionalInt::of).orElse(OptionalInt.empty()),
                row.text(Column.TAKEN_BY),
                row.text(Column.TAKEN_WHY)));
    }

    private static Optional<Reading> reading(Row row) {
        Optional<Side> side = row.need(Column.SIDE, text -> ValueParts.code(Side.class, text, "side"));
        Optional<Site> site = row.need(Column.JOINT, EntryRow::site);
        Optional<Motion> motion = row.need(Column.MOTION, text -> ValueParts.code(Motion.class, text, "motion"));
        Optional<Mode> mode = row.need(Column.MODE, text -> ValueParts.code(Mode.class, text, "mode"));
        Optional<Placement> placement =
                row.need(Column.PLACEMENT, text -> ValueParts.code(Placement.class, text, "placement"));
        Optional<Value> value = value(row);
        if (side.isEmpty() || site.isEmpty() || motion.isEmpty() || mode.isEmpty() || placement.isEmpty()) {
            return Optional.empty();
        }
        Measure measure = new Measure(site.get(), motion.get());
        return value.flatMap(
                v -> row.read(Column.KIND, kind -> new Reading(side.get(), measure, mode.get(), v, placement.get())));
    }

    private static Optional<Value> value(Row row) {
        Optional<ValueForm.Kind> kind = row.need(Column.KIND, ValueParts::kind);
        Optional<Boolean> numeric = row.read(
                Column.VALUE, text -> text.isEmpty() || Cells.decimal(text).signum() >= 0);
        Optional<Boolean> unit = kind.flatMap(k -> row.read(Column.UNIT, text -> unitFits(k, text)));
        if (unit.isEmpty() || numeric.isEmpty()) {
            return Optional.empty();
        }
        String number = row.text(Column.VALUE);
        return row.read(
                Column.VALUE,
                text -> Cells.value(
                        ValueParts.code(kind.orElseThrow()), number, row.text(Column.UNIT), row.text(Column.DETAIL)));
    }

    private static boolean unitFits(ValueForm.Kind kind, String unit) {
        ValueParts.requireUnit(kind, unit);
        return true;
    }

    private static Optional<Heard> heard(Row row) {
        Optional<Heard.Source> source =
                row.need(Column.HEARD_SOURCE, text -> ValueParts.code(Heard.Source.class, text, "source"));
        Optional<Double> confidence = row.need(Column.HEARD_CONFIDENCE, EntryRow::confidence);
        Optional<Duration> start = row.need(Column.HEARD_START, EntryRow::duration);
        Optional<Duration> end = row.need(Column.HEARD_END, EntryRow::duration);
        if (source.isEmpty() || confidence.isEmpty() || start.isEmpty()) {
            return Optional.empty();
        }
        Versions versions = new Versions(row.text(Column.GRAMMAR), row.text(Column.MODEL), row.text(Column.RULES));
        return end.map(
                e -> new Heard(row.text(Column.HEARD_TEXT), source.get(), confidence.get(), start.get(), e, versions));
    }

    private static List<JournalEvent> decisions(Row row, int number) {
        List<JournalEvent> events = new ArrayList<>();
        row.optional(Column.ACCEPTED_AT, OffsetDateTime::parse)
                .map(at -> new Released(at, number, row.text(Column.ACCEPTED_BY), row.text(Column.ACCEPTED_WHY)))
                .ifPresent(events::add);
        row.optional(Column.CONFIRMED_AT, OffsetDateTime::parse)
                .map(at -> new Confirmed(at, number, row.text(Column.CONFIRMED_BY)))
                .ifPresent(events::add);
        row.optional(Column.REJECTED_AT, OffsetDateTime::parse)
                .map(at -> new Rejected(at, number, row.text(Column.REJECTED_BY), row.text(Column.REJECTED_WHY)))
                .ifPresent(events::add);
        return events;
    }

    private static Site site(String text) {
        Site site = new Site(text);
        if (!Sites.standard().knows(site)) {
            throw new IllegalArgumentException("'" + text + "' is not a joint or landmark of the table of sites");
        }
        return site;
    }

    private static boolean yesNo(String text) {
        return switch (text) {
            case "yes" -> true;
            case "no" -> false;
            default -> throw new IllegalArgumentException("'" + text + "' must be yes or no");
        };
    }

    private static Duration duration(String text) {
        try {
            return Duration.parse(text);
        } catch (DateTimeException e) {
            throw new IllegalArgumentException("'" + text + "' is not a duration such as PT2.5S", e);
        }
    }

    private static double confidence(String text) {
        double confidence = Cells.decimal(text).doubleValue();
        if (confidence > 1) {
            throw new IllegalArgumentException("'" + text + "' must be between 0 and 1");
        }
        return confidence;
    }
}
