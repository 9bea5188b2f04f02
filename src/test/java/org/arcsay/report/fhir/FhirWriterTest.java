package org.arcsay.report.fhir;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import ca.uhn.fhir.context.FhirContext;
import ca.uhn.fhir.context.support.DefaultProfileValidationSupport;
import ca.uhn.fhir.validation.FhirValidator;
import ca.uhn.fhir.validation.ResultSeverityEnum;
import ca.uhn.fhir.validation.SingleValidationMessage;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.arcsay.model.Distance;
import org.arcsay.model.LengthUnit;
import org.arcsay.model.Measure;
import org.arcsay.model.Motion;
import org.arcsay.model.Side;
import org.arcsay.model.Value.Angle;
import org.arcsay.model.Value.Gap;
import org.arcsay.model.Value.NotTestedReason;
import org.arcsay.model.Value.Phrase;
import org.arcsay.model.Value.Unquantified;
import org.arcsay.report.content.DemoCase;
import org.arcsay.report.content.FullSeries;
import org.arcsay.report.content.Golden;
import org.arcsay.report.content.Report;
import org.arcsay.report.content.VisitRecord;
import org.arcsay.report.content.VisitScript;
import org.arcsay.report.content.Written;
import org.arcsay.tables.TableException;
import org.hl7.fhir.common.hapi.validation.support.CommonCodeSystemsTerminologyService;
import org.hl7.fhir.common.hapi.validation.support.InMemoryTerminologyServerValidationSupport;
import org.hl7.fhir.common.hapi.validation.support.ValidationSupportChain;
import org.hl7.fhir.common.hapi.validation.validator.FhirInstanceValidator;
import org.hl7.fhir.r4.model.Bundle;
import org.hl7.fhir.r4.model.Observation;
import org.hl7.fhir.r4.model.Reference;
import org.junit.jupiter.api.Test;

/** Checked against the R4 definitions that the HAPI FHIR validator carries with it, without a network. */
class FhirWriterTest {
    private static final FhirContext R4 = FhirContext.forR4();
    private static final FhirValidator VALIDATOR = validator();
    private static final FhirWriter WRITER = new FhirWriter(FhirCodes.none());

    @Test
    void theDemoCaseReadsAsBefore() {
        Golden.assertText("report.fhir.json", Written.bytes(WRITER, DemoCase.report()));
    }

    @Test
    void theDemoCaseIsValidR4() {
        assertEquals(List.of(), complaints(Written.text(WRITER, DemoCase.report())));
    }

    @Test
    void everyKindOfEntryIsValidR4() {
        assertEquals(List.of(), complaints(Written.text(WRITER, report(everyKind()))));
    }

    /** Everything that the validator has to say, counted; what is only information does not concern validity. */
    @Test
    void theValidatorsWholeOutputIsAsBefore() {
        String counts = counted("demo case", Written.text(WRITER, DemoCase.report()))
                + counted("every kind of entry", Written.text(WRITER, report(everyKind())))
                + counted(
                        "full series, visit 20",
                        Written.text(WRITER, Report.of(DemoCase.source(FullSeries.visits(20)))));

        Golden.assertText("fhir-validation.txt", counts.getBytes(StandardCharsets.UTF_8));
    }

    private static String counted(String name, String json) {
        List<SingleValidationMessage> messages = messages(json);
        StringBuilder line = new StringBuilder(name + ": " + observations(json).size() + " observations");
        for (ResultSeverityEnum severity : ResultSeverityEnum.values()) {
            long count = messages.stream()
                    .filter(message -> message.getSeverity() == severity)
                    .count();
            line.append(", ").append(count).append(' ').append(severity.getCode());
        }
        return line.append('\n').toString();
    }

    /** The validator must be able to say no, or agreeing with it means nothing. */
    @Test
    void theValidatorRefusesWhatIsWrong() {
        String sound = Written.text(WRITER, report(everyKind()));
        for (String[] change : new String[][] {
            {"\"status\" : \"preliminary\"", "\"status\" : \"perhaps\""},
            {"\"code\" : \"deg\"", "\"code\" : \"degrees of arc\""},
            {"\"code\" : \"not-performed\"", "\"code\" : \"forgotten\""},
            {"\"valueInteger\" : 4", "\"valueInteger\" : \"four\""},
            {"\"resourceType\" : \"Observation\"", "\"resourceType\" : \"Measurement\""}
        }) {
            assertTrue(sound.contains(change[0]), change[0]);
            assertFalse(errors(sound.replace(change[0], change[1])).isEmpty(), change[1]);
        }
    }

    @Test
    void statusFollowsWhatBecameOfTheEntry() {
        Map<String, Observation> observations = observations(report(everyKind()));

        assertEquals("PRELIMINARY", status(observations, "entry 1"));
        assertEquals("FINAL", status(observations, "entry 2"));
        assertEquals("AMENDED", status(observations, "entry 3"));
        assertEquals("ENTEREDINERROR", status(observations, "entry 4"));
        assertEquals(
                50, observations.get("entry 3").getValueQuantity().getValue().intValue());
        assertFalse(observations.containsKey("entry 11"), "a correction keeps the identity of what it corrects");
    }

    @Test
    void aValueIsUnsignedAndItsDirectionIsInTheCode() {
        Map<String, Observation> observations = observations(DemoCase.report());
        List<String> texts = observations.values().stream()
                .filter(o -> o.getCode().getText().contains("extension"))
                .map(o -> o.getCode().getText() + " " + o.getValueQuantity().getValue())
                .toList();

        assertTrue(texts.contains("thumb IP: extension deficit, active 5"), texts.toString());
        assertTrue(texts.contains("thumb IP: extension hyperextension, active 55"), texts.toString());
        assertTrue(texts.contains("thumb IP: extension neutral, passive 0"), texts.toString());
    }

    @Test
    void notTestedHasAReasonAndNoValue() {
        Map<String, Observation> observations = observations(report(everyKind()));

        Observation protocol = observations.get("entry 5");
        assertFalse(protocol.hasValue());
        assertEquals(
                "not-performed",
                protocol.getDataAbsentReason().getCodingFirstRep().getCode());
        assertEquals("not tested: protocol", protocol.getDataAbsentReason().getText());
        assertEquals(
                "asked-declined",
                observations
                        .get("entry 6")
                        .getDataAbsentReason()
                        .getCodingFirstRep()
                        .getCode());
    }

    /** 50 + 58 - 5 = 103 degrees, from the four readings it names. */
    @Test
    void totalActiveMotionIsDerivedFromItsParts() {
        Map<String, Observation> observations = observations(DemoCase.report());
        Observation total = observations.get("right thumb TAM");
        List<String> parts = new ArrayList<>();
        for (Reference reference : total.getDerivedFrom()) {
            observations.values().stream()
                    .filter(o -> o == reference.getResource())
                    .forEach(o -> parts.add(
                            o.getCode().getText() + " " + o.getValueQuantity().getValue()));
        }

        assertEquals(103, total.getValueQuantity().getValue().intValue());
        assertEquals(
                List.of(
                        "thumb MP: flexion, active 50",
                        "thumb IP: flexion, active 58",
                        "thumb MP: extension neutral, active 0",
                        "thumb IP: extension deficit, active 5"),
                parts);
    }

    @Test
    void theNormSetIsNamed() {
        Observation flexion = observations(DemoCase.report()).get("entry 3");

        assertTrue(flexion.getReferenceRangeFirstRep().getText().startsWith("Barakat, Field, Taylor 2013: 88"));
        assertEquals(
                "norm set barakat-2013",
                flexion.getReferenceRangeFirstRep().getType().getText());
        assertEquals(80, flexion.getReferenceRangeFirstRep().getLow().getValue().intValue());
    }

    @Test
    void noCodeIsInventedAndAClinicsCodesAreUsed() {
        Observation plain = observations(DemoCase.report()).get("entry 3");
        assertTrue(plain.getCode().getCoding().isEmpty());
        assertTrue(plain.getBodySite().getCoding().isEmpty());

        FhirCodes codes = FhirCodes.read(
                "codes",
                "part\tkey\tsystem\tcode\tdisplay\n"
                        + "code\tIP:FLEXION active\turn:oid:2.999.1\tipf\tIP flexion\n"
                        + "bodySite\tleft IP\turn:oid:2.999.2\tlip\t-\n");
        Observation coded = observations(Written.text(new FhirWriter(codes), DemoCase.report()))
                .get("entry 3");
        assertEquals("ipf", coded.getCode().getCodingFirstRep().getCode());
        assertEquals("lip", coded.getBodySite().getCodingFirstRep().getCode());
        assertEquals("left thumb IP", coded.getBodySite().getText());
    }

    /** The file that a clinic starts from is read, and gives no code. */
    @Test
    void theMappingFileToFillInIsSound() throws IOException {
        FhirCodes empty = FhirCodes.read("fhir-codes.tsv", Files.readString(Path.of("docs/fhir-codes.tsv")));

        assertEquals(Written.text(WRITER, DemoCase.report()), Written.text(new FhirWriter(empty), DemoCase.report()));
    }

    @Test
    void aWrongMappingFileIsRefusedByLine() {
        TableException refused = assertThrows(
                TableException.class,
                () -> FhirCodes.read("codes.tsv", "part\tkey\tsystem\tcode\tdisplay\nsite\ta\tb\tc\td\n"));

        assertTrue(refused.getMessage().contains("Line 2"), refused.getMessage());
    }

    private static VisitRecord everyKind() {
        VisitScript script = new VisitScript(1, "demo-08", "2026-04-01T08:00:00.250+02:00").hand(Side.RIGHT);
        Measure ringTip = Measure.of("ring tip", Motion.OPPOSITION_GAP);
        return script.angle("IP", Motion.FLEXION, 60)
                .joint("MP", 15, -10)
                .angle("CMC", Motion.RADIAL_ABDUCTION, 15)
                .notTested("CMC", Motion.PALMAR_ABDUCTION, NotTestedReason.PROTOCOL)
                .notTested("index tip", Motion.OPPOSITION_GAP, NotTestedReason.DECLINED)
                .take(Measure.of("CMC", Motion.FLEXION), new Unquantified(Phrase.WITHIN_NORMAL_LIMITS))
                .take(
                        Measure.of("middle tip", Motion.OPPOSITION_GAP),
                        new Gap(Distance.of("3.8", LengthUnit.CENTIMETRE)))
                .take(ringTip, new Gap(Distance.of("1.5", LengthUnit.INCH)))
                .score(4)
                .confirm(2)
                .confirm(3)
                .reject(4, "a <slip> & nothing else")
                .correct(3, Measure.of("MP", Motion.FLEXION), Angle.of(50), "misheard")
                .confirm(11)
                .record();
    }

    private static Report report(VisitRecord visit) {
        return Report.of(DemoCase.source(List.of(visit)));
    }

    private static String status(Map<String, Observation> observations, String entry) {
        return observations.get(entry).getStatus().name();
    }

    private static Map<String, Observation> observations(Report report) {
        return observations(Written.text(WRITER, report));
    }

    private static Map<String, Observation> observations(String json) {
        Map<String, Observation> observations = new TreeMap<>();
        R4.newJsonParser().parseResource(Bundle.class, json).getEntry().forEach(entry -> {
            Observation observation = (Observation) entry.getResource();
            String identifier = observation.getIdentifierFirstRep().getValue();
            observations.put(identifier.substring(identifier.indexOf(", ") + 2), observation);
        });
        return observations;
    }

    private static List<String> complaints(String json) {
        return messages(json).stream()
                .filter(message -> message.getSeverity() != ResultSeverityEnum.INFORMATION)
                .map(FhirWriterTest::words)
                .toList();
    }

    private static List<String> errors(String json) {
        return messages(json).stream()
                .filter(message -> message.getSeverity().ordinal() >= ResultSeverityEnum.ERROR.ordinal())
                .map(FhirWriterTest::words)
                .toList();
    }

    private static List<SingleValidationMessage> messages(String json) {
        try {
            return VALIDATOR.validateWithResult(json).getMessages();
        } catch (RuntimeException e) {
            SingleValidationMessage unreadable = new SingleValidationMessage();
            unreadable.setSeverity(ResultSeverityEnum.FATAL);
            unreadable.setMessage(e.getMessage());
            return List.of(unreadable);
        }
    }

    private static String words(SingleValidationMessage message) {
        return message.getSeverity() + " " + message.getLocationString() + ": " + message.getMessage();
    }

    private static FhirValidator validator() {
        ValidationSupportChain support = new ValidationSupportChain(
                new DefaultProfileValidationSupport(R4),
                new CommonCodeSystemsTerminologyService(R4),
                new InMemoryTerminologyServerValidationSupport(R4));
        return R4.newValidator().registerValidatorModule(new FhirInstanceValidator(support));
    }
}
