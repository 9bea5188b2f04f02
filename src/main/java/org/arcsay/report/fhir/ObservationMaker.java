package org.arcsay.report.fhir;

import java.math.BigDecimal;
import java.nio.charset.StandardCharsets;
import java.time.OffsetDateTime;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import java.util.stream.Stream;
import org.arcsay.analysis.Amount;
import org.arcsay.analysis.Norm;
import org.arcsay.analysis.Total;
import org.arcsay.model.Dimension;
import org.arcsay.model.Entry;
import org.arcsay.model.EntryStatus;
import org.arcsay.model.Finding;
import org.arcsay.model.Placement;
import org.arcsay.model.Reading;
import org.arcsay.model.Remark;
import org.arcsay.model.Side;
import org.arcsay.model.Site;
import org.arcsay.model.Sites;
import org.arcsay.model.Value.Extension;
import org.arcsay.report.content.EntryTrail;
import org.arcsay.report.content.EntryTrail.Decision;
import org.arcsay.report.content.Report;
import org.arcsay.report.content.Standing;
import org.arcsay.report.content.TotalLine;
import org.arcsay.report.content.ValueParts;
import org.arcsay.report.content.VisitRecord;
import org.arcsay.report.fhir.FhirBundle.Annotation;
import org.arcsay.report.fhir.FhirBundle.Concept;
import org.arcsay.report.fhir.FhirBundle.Identifier;
import org.arcsay.report.fhir.FhirBundle.Narrative;
import org.arcsay.report.fhir.FhirBundle.Observation;
import org.arcsay.report.fhir.FhirBundle.Quantity;
import org.arcsay.report.fhir.FhirBundle.Range;
import org.arcsay.report.fhir.FhirBundle.Reference;

/** Turns entries and totals of the reported visit into observations. Immutable, so any thread may use it. */
final class ObservationMaker {
    private static final List<Concept> EXAM =
            List.of(Concept.of("http://terminology.hl7.org/CodeSystem/observation-category", "exam", "Exam", "Exam"));

    private final Report report;
    private final VisitRecord visit;
    private final FhirCodes codes;

    ObservationMaker(Report report, FhirCodes codes) {
        this.report = report;
        this.visit = report.current();
        this.codes = codes;
    }

    /** One for each entry that was not replaced, and one for each complete total. */
    List<Observation> observations() {
        Stream<Observation> entries = visit.visit().entries().stream()
                .filter(entry -> entry.status() != EntryStatus.SUPERSEDED)
                .map(this::observation);
        Stream<Observation> totals = report.totals().stream()
                .filter(line -> line.total().degrees().isPresent())
                .map(this::observation);
        return Stream.concat(entries, totals).toList();
    }

    /** Lasting identity: the same entry keeps it through corrections and through export and import. */
    String id(String part) {
        String name = visit.visit().patient() + "|" + time(visit.visit().startedAt()) + "|" + part;
        return UUID.nameUUIDFromBytes(name.getBytes(StandardCharsets.UTF_8)).toString();
    }

    private Observation observation(Entry entry) {
        Reading reading = entry.reading();
        EntryTrail trail = visit.trail(entry);
        FhirValue value = FhirValue.of(reading.value());
        String number = "entry " + visit.origin(entry).number();
        return new Observation(
                "Observation",
                id(number),
                Narrative.of(words(entry)),
                identifier(number),
                visit.standing(entry).code(),
                EXAM,
                codes.concept("code", codeKey(reading), codeText(reading)),
                Reference.patient(visit.visit().patient().text()),
                time(entry.takenAt()),
                trail.confirmed().map(Decision::at).map(ObservationMaker::time),
                performer(trail),
                value.quantity(),
                value.points(),
                value.words(),
                value.absent(),
                notes(entry, trail),
                bodySite(reading.side(), reading.measure().site()),
                codes.concept("method", methodKey(reading), method(reading)),
                ranges(reading),
                List.of());
    }

    private Observation observation(TotalLine line) {
        Total total = line.total();
        List<Entry> parts = Stream.concat(total.flexions().stream(), total.extensions().stream())
                .map(this::entry)
                .toList();
        String key = total.motion().id() + " " + total.abbreviation();
        String number = total.side().word() + " " + key;
        return new Observation(
                "Observation",
                id(number),
                Narrative.of(line.words()),
                identifier(number),
                standing(parts).code(),
                EXAM,
                codes.concept(
                        "code",
                        key,
                        "Total " + total.mode().word() + " motion (" + total.abbreviation() + "), "
                                + total.motion().title()),
                Reference.patient(visit.visit().patient().text()),
                time(parts.stream()
                        .map(Entry::takenAt)
                        .max(OffsetDateTime::compareTo)
                        .orElseThrow()),
                Optional.empty(),
                List.of(Reference.display(report.source().program() + ", computed")),
                total.degrees().map(FhirValue::degrees),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Stream.concat(
                                Stream.of("Flexion less extension deficits; hyperextension is not added."),
                                total.grade().stream()
                                        .map(band -> band.words() + ", "
                                                + total.motion().scale().title()))
                        .map(Annotation::of)
                        .toList(),
                codes.concept(
                        "bodySite",
                        total.side().word() + " " + total.motion().id(),
                        total.side().word() + " " + total.motion().id()),
                codes.concept(
                        "method",
                        total.mode().word() + " sum",
                        "computed from " + total.mode().word() + " motion"),
                List.of(new Range(
                        Optional.empty(),
                        Optional.of(FhirValue.degrees(total.motion().reference())),
                        Concept.text("published full motion"),
                        total.motion().provenance().words())),
                parts.stream()
                        .map(part ->
                                Reference.to(id("entry " + visit.origin(part).number())))
                        .toList());
    }

    private Entry entry(Reading reading) {
        return visit.visit().counting().stream()
                .filter(entry -> entry.reading().equals(reading))
                .reduce((first, second) -> second)
                .orElseThrow();
    }

    private Standing standing(List<Entry> parts) {
        List<Standing> standings = parts.stream().map(visit::standing).toList();
        if (standings.contains(Standing.PRELIMINARY)) {
            return Standing.PRELIMINARY;
        }
        return standings.contains(Standing.AMENDED) ? Standing.AMENDED : Standing.FINAL;
    }

    private List<Identifier> identifier(String part) {
        return List.of(new Identifier("visit " + visit.visit().id() + ", " + part));
    }

    private static String words(Entry entry) {
        return entry.reading().words();
    }

    /** The direction of an extension is part of what is observed, because the number has no sign. */
    private static String codeText(Reading reading) {
        return Sites.standard().info(reading.measure().site()).label() + ": " + direction(reading) + ", "
                + reading.mode().word();
    }

    private static String direction(Reading reading) {
        String motion = reading.measure().motion().words();
        return reading.value() instanceof Extension extension
                ? motion + " " + ValueParts.lower(extension.kind())
                : motion;
    }

    private static String codeKey(Reading reading) {
        String kind = reading.value() instanceof Extension extension ? " " + ValueParts.lower(extension.kind()) : "";
        return reading.measure().id() + kind + " " + reading.mode().word();
    }

    private Concept bodySite(Side side, Site site) {
        String text = side.word() + " " + Sites.standard().info(site).label();
        return codes.concept("bodySite", side.word() + " " + site.code(), text);
    }

    private static String methodKey(Reading reading) {
        return reading.mode().word() + " " + reading.placement().word();
    }

    private static String method(Reading reading) {
        String instrument =
                switch (reading.measure().dimension()) {
                    case ANGLE, EXTENSION -> "goniometer";
                    case GAP, SPAN -> "ruler";
                    case SCORE -> "opposition score after Kapandji, 0 to 10";
                };
        boolean stated = reading.placement() == Placement.DORSAL || reading.placement() == Placement.LATERAL;
        return reading.mode().word() + " motion, " + instrument
                + (stated ? ", " + reading.placement().word() + " placement" : "");
    }

    private static List<Reference> performer(EntryTrail trail) {
        String by = trail.confirmed()
                .map(Decision::by)
                .filter(name -> !name.isBlank())
                .orElse(trail.takenBy());
        return by.isBlank() ? List.of() : List.of(Reference.display(by));
    }

    private List<Annotation> notes(Entry entry, EntryTrail trail) {
        List<String> notes = new ArrayList<>();
        entry.remarks().stream().map(Remark::words).forEach(notes::add);
        entry.findings().stream().map(Finding::sentence).forEach(notes::add);
        trail.accepted()
                .map(accepted -> "Accepted as said" + reason(accepted.why()))
                .ifPresent(notes::add);
        visit.corrected(entry)
                .map(older -> "Corrected from: " + words(older) + reason(trail.takenWhy()))
                .ifPresent(notes::add);
        trail.rejected().map(rejected -> "Taken back" + reason(rejected.why())).ifPresent(notes::add);
        return notes.stream().map(Annotation::of).toList();
    }

    private static String reason(String why) {
        return why.isBlank() ? "." : ": " + why + ".";
    }

    private List<Range> ranges(Reading reading) {
        return report
                .source()
                .norms()
                .find(reading.measure(), reading.mode())
                .map(norm -> range(reading, norm))
                .stream()
                .toList();
    }

    /** Limits as numbers only where numbers have no direction; the text always names set and source. */
    private Range range(Reading reading, Norm norm) {
        boolean directed = reading.measure().dimension() == Dimension.EXTENSION;
        return new Range(
                directed ? Optional.empty() : norm.low().flatMap(low -> quantity(low, norm.scale())),
                directed ? Optional.empty() : norm.high().flatMap(high -> quantity(high, norm.scale())),
                Concept.text("norm set " + report.source().norms().id()),
                report.source().norms().label() + ": " + norm.words());
    }

    private static Optional<Quantity> quantity(BigDecimal number, Amount.Scale scale) {
        return switch (scale) {
            case DEGREES -> Optional.of(FhirValue.degrees(number));
            case MILLIMETRES -> Optional.of(new Quantity(number, "mm", "mm"));
            case POINTS -> Optional.empty();
        };
    }

    private static String time(OffsetDateTime time) {
        return DateTimeFormatter.ISO_OFFSET_DATE_TIME.format(time);
    }
}
