package org.arcsay.report.content;

import java.math.BigDecimal;
import java.time.Duration;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalInt;
import org.arcsay.model.Distance;
import org.arcsay.model.EntryStatus;
import org.arcsay.model.Finding;
import org.arcsay.model.Heard;
import org.arcsay.model.JournalEvent;
import org.arcsay.model.LengthUnit;
import org.arcsay.model.Measure;
import org.arcsay.model.Mode;
import org.arcsay.model.Motion;
import org.arcsay.model.PatientCode;
import org.arcsay.model.Placement;
import org.arcsay.model.Reading;
import org.arcsay.model.Remark;
import org.arcsay.model.Side;
import org.arcsay.model.Value;
import org.arcsay.model.Value.Angle;
import org.arcsay.model.Value.Extension;
import org.arcsay.model.Value.Gap;
import org.arcsay.model.Value.NotTested;
import org.arcsay.model.Value.NotTestedReason;
import org.arcsay.model.Value.Score;
import org.arcsay.model.Versions;
import org.arcsay.model.Visit;

/** Writes the journal of an invented visit, five seconds an event. For one thread. */
public final class VisitScript {
    private static final Versions VERSIONS = new Versions("g-5f2c", "en-thumb-91ab", "rules-1");

    private final Visit begun;
    private final List<JournalEvent> journal = new ArrayList<>();
    private OffsetDateTime now;
    private int entries;
    private Side side = Side.LEFT;
    private Mode mode = Mode.ACTIVE;
    private Placement placement = Placement.UNSTATED;

    public VisitScript(long id, String patient, String start) {
        now = OffsetDateTime.parse(start);
        begun = Visit.begun(id, new PatientCode(patient), now);
    }

    public VisitScript hand(Side next) {
        side = next;
        return this;
    }

    public VisitScript mode(Mode next) {
        mode = next;
        return this;
    }

    public VisitScript placed(Placement next) {
        placement = next;
        return this;
    }

    /** A joint's flexion, and its extension as degrees beyond neutral: negative numbers are a deficit. */
    public VisitScript joint(String site, int flexion, int beyondNeutral) {
        return angle(site, Motion.FLEXION, flexion).extension(site, beyondNeutral);
    }

    public VisitScript extension(String site, int beyondNeutral) {
        BigDecimal degrees = BigDecimal.valueOf(Math.abs(beyondNeutral));
        Value.ExtensionKind kind = beyondNeutral < 0 ? Value.ExtensionKind.DEFICIT : Value.ExtensionKind.HYPEREXTENSION;
        return take(Measure.of(site, Motion.EXTENSION), new Extension(kind, degrees));
    }

    public VisitScript angle(String site, Motion motion, int degrees) {
        return take(Measure.of(site, motion), Angle.of(degrees));
    }

    public VisitScript gap(String target, int millimetres) {
        return take(
                Measure.of(target, Motion.OPPOSITION_GAP),
                new Gap(new Distance(BigDecimal.valueOf(millimetres), LengthUnit.MILLIMETRE)));
    }

    public VisitScript score(int points) {
        return take(Measure.of("thumb", Motion.OPPOSITION_SCORE), new Score(points));
    }

    public VisitScript notTested(String site, Motion motion, NotTestedReason reason) {
        return take(Measure.of(site, motion), new NotTested(reason));
    }

    public VisitScript take(Measure measure, Value value) {
        return take(measure, value, List.of(), false, OptionalInt.empty(), "");
    }

    /** The next entry is held because of a finding. */
    public VisitScript held(Measure measure, Value value, Finding finding) {
        return take(measure, value, List.of(finding), true, OptionalInt.empty(), "");
    }

    /** The next entry has a finding and is kept. */
    public VisitScript asked(Measure measure, Value value, Finding finding) {
        return take(measure, value, List.of(finding), false, OptionalInt.empty(), "");
    }

    /** The next entry corrects an older one. */
    public VisitScript correct(int older, Measure measure, Value value, String why) {
        return take(measure, value, List.of(), false, OptionalInt.of(older), why);
    }

    private VisitScript take(
            Measure measure, Value value, List<Finding> findings, boolean held, OptionalInt replaces, String why) {
        entries++;
        Reading reading = new Reading(side, measure, mode, value, placement);
        Duration start = Duration.between(begun.startedAt(), now);
        Heard heard = new Heard(reading.words(), Heard.Source.VOICE, 0.97, start, start.plusMillis(2340), VERSIONS);
        journal.add(new JournalEvent.Taken(
                tick(), entries, reading, List.of(), findings, heard, held, replaces, "HT", why));
        return this;
    }

    /** Adds a remark to the last entry. */
    public VisitScript remark(Remark remark) {
        journal.add(new JournalEvent.Remarked(tick(), entries, remark, "HT"));
        return this;
    }

    public VisitScript release(String why) {
        journal.add(new JournalEvent.Released(tick(), entries, "HT", why));
        return this;
    }

    public VisitScript reject(int entry, String why) {
        journal.add(new JournalEvent.Rejected(tick(), entry, "HT", why));
        return this;
    }

    public VisitScript confirm(int entry) {
        journal.add(new JournalEvent.Confirmed(tick(), entry, "HT"));
        return this;
    }

    public VisitScript later(Duration pause) {
        now = now.plus(pause);
        return this;
    }

    public VisitScript end() {
        journal.add(new JournalEvent.Ended(tick(), "HT"));
        return this;
    }

    /** Confirms every entry that counts and is not confirmed yet. */
    public VisitScript confirmAll() {
        begun.replay(journal).counting().stream()
                .filter(entry -> entry.status() != EntryStatus.CONFIRMED)
                .forEach(entry -> confirm(entry.number()));
        return this;
    }

    public int lastEntry() {
        return entries;
    }

    public VisitRecord record() {
        return VisitRecord.replay(begun, journal);
    }

    private OffsetDateTime tick() {
        now = now.plusSeconds(5);
        return now;
    }
}
