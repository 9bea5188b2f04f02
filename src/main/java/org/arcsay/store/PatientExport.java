package org.arcsay.store;

import com.fasterxml.jackson.annotation.JsonSubTypes;
import com.fasterxml.jackson.annotation.JsonSubTypes.Type;
import com.fasterxml.jackson.annotation.JsonTypeInfo;
import java.nio.file.Path;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import org.arcsay.model.JournalEvent;
import org.arcsay.model.PatientCode;
import org.arcsay.model.PatientProtocol;
import org.arcsay.model.ProtocolVersion;
import org.arcsay.model.Remark;
import org.arcsay.model.Value;
import org.arcsay.model.Visit;
import org.arcsay.store.StoreException.Problem;
import tools.jackson.core.JacksonException;
import tools.jackson.databind.ObjectMapper;
import tools.jackson.databind.SerializationFeature;
import tools.jackson.databind.cfg.DateTimeFeature;
import tools.jackson.databind.json.JsonMapper;

/**
 * Everything that is kept about one patient.
 *
 * @param format always {@value #FORMAT}
 * @param version version of this form, 1 or 2
 * @param patient the code
 * @param visits in the order in which they were begun
 * @param protocols what the treatment protocol said, in the order in which it was set; absent before version 2
 */
record PatientExport(
        String format, int version, String patient, List<VisitExport> visits, List<ProtocolExport> protocols) {
    static final String FORMAT = "arcsay-patient";
    private static final int VERSION = 2;

    PatientExport {
        protocols = protocols == null ? List.of() : List.copyOf(protocols);
    }

    /** What a protocol said from a moment on, as statements. */
    record ProtocolExport(OffsetDateTime at, String by, List<String> statements) {
        static ProtocolExport of(ProtocolVersion version) {
            return new ProtocolExport(
                    version.at(), version.by(), version.protocol().statements());
        }

        ProtocolVersion version() {
            return new ProtocolVersion(
                    Objects.requireNonNull(at, "at"),
                    Objects.requireNonNull(by, "by"),
                    PatientProtocol.parse(String.join("; ", statements)));
        }
    }

    /** One visit with its journal. */
    record VisitExport(long id, OffsetDateTime startedAt, String plan, List<JournalEvent> events) {}

    @JsonTypeInfo(use = JsonTypeInfo.Id.NAME, property = "event")
    @JsonSubTypes({
        @Type(value = JournalEvent.Taken.class, name = "taken"),
        @Type(value = JournalEvent.Remarked.class, name = "remarked"),
        @Type(value = JournalEvent.Released.class, name = "released"),
        @Type(value = JournalEvent.Rejected.class, name = "rejected"),
        @Type(value = JournalEvent.Confirmed.class, name = "confirmed"),
        @Type(value = JournalEvent.Ended.class, name = "ended")
    })
    private interface EventForm {}

    @JsonTypeInfo(use = JsonTypeInfo.Id.NAME, property = "value")
    @JsonSubTypes({
        @Type(value = Value.Angle.class, name = "angle"),
        @Type(value = Value.Extension.class, name = "extension"),
        @Type(value = Value.Gap.class, name = "gap"),
        @Type(value = Value.Span.class, name = "span"),
        @Type(value = Value.Score.class, name = "score"),
        @Type(value = Value.NotTested.class, name = "not tested"),
        @Type(value = Value.Unquantified.class, name = "unquantified")
    })
    private interface ValueForm {}

    @JsonTypeInfo(use = JsonTypeInfo.Id.NAME, property = "remark")
    @JsonSubTypes({
        @Type(value = Remark.Pain.class, name = "pain"),
        @Type(value = Remark.Quality.class, name = "quality"),
        @Type(value = Remark.Note.class, name = "note")
    })
    private interface RemarkForm {}

    static ObjectMapper mapper() {
        return JsonMapper.builder()
                .enable(SerializationFeature.INDENT_OUTPUT)
                .disable(DateTimeFeature.WRITE_DATES_AS_TIMESTAMPS)
                .disable(DateTimeFeature.WRITE_DURATIONS_AS_TIMESTAMPS)
                .disable(DateTimeFeature.ADJUST_DATES_TO_CONTEXT_TIME_ZONE)
                .addMixIn(JournalEvent.class, EventForm.class)
                .addMixIn(Value.class, ValueForm.class)
                .addMixIn(Remark.class, RemarkForm.class)
                .build();
    }

    /**
     * Reads an export back.
     *
     * @param source named in messages
     * @throws StoreException when the text is not an export of this version, or says what cannot be
     */
    static PatientExport parse(Path source, String json) throws StoreException {
        try {
            PatientExport export = mapper().readValue(json, PatientExport.class);
            if (!FORMAT.equals(export.format())) {
                throw new StoreException(
                        Problem.NOT_OURS, source + " is not the export of a patient. Nothing was stored.");
            }
            if (export.version() > VERSION) {
                throw new StoreException(
                        Problem.NEWER,
                        source + " was written by a newer version of this program. Nothing was stored. "
                                + "Install that version to read it.");
            }
            export.requireWhole();
            return export;
        } catch (JacksonException | IllegalArgumentException | IllegalStateException | NullPointerException e) {
            throw incomplete(source, e);
        }
    }

    static StoreException incomplete(Path source, Exception cause) {
        return new StoreException(
                Problem.DAMAGED,
                source + " does not hold a whole export of a patient. Nothing was stored. Use another copy.",
                cause);
    }

    /** Every journal must lead to a state. */
    private void requireWhole() {
        PatientCode code = new PatientCode(patient);
        for (VisitExport visit : visits) {
            Objects.requireNonNull(visit.plan(), "plan");
            Visit.begun(1, code, Objects.requireNonNull(visit.startedAt(), "startedAt"))
                    .replay(visit.events());
        }
        protocols.forEach(ProtocolExport::version);
    }

    static byte[] json(VisitStore store, PatientCode patient) throws StoreException {
        if (!store.knows(patient)) {
            throw new StoreException(
                    Problem.REFUSED, "There is no patient " + patient + " in the records. Check the code.");
        }
        List<VisitExport> visits = new ArrayList<>();
        for (Visit visit : store.visits(patient)) {
            visits.add(new VisitExport(
                    visit.id(), visit.startedAt(), store.plan(visit.id()).orElse(""), store.history(visit.id())));
        }
        List<ProtocolExport> protocols =
                store.protocols(patient).stream().map(ProtocolExport::of).toList();
        return mapper().writeValueAsBytes(new PatientExport(FORMAT, VERSION, patient.text(), visits, protocols));
    }
}
