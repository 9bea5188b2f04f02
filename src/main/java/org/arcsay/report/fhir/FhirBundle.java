package org.arcsay.report.fhir;

import java.math.BigDecimal;
import java.util.List;
import java.util.Optional;

/** The parts of HL7 FHIR R4 (4.0.1) that are written, named and ordered as the specification has them. */
record FhirBundle(String resourceType, String id, String type, String timestamp, List<Entry> entry) {
    FhirBundle(String id, String timestamp, List<Observation> observations) {
        this(
                "Bundle",
                id,
                "collection",
                timestamp,
                observations.stream().map(o -> new Entry(url(o.id()), o)).toList());
    }

    static String url(String id) {
        return "urn:uuid:" + id;
    }

    record Entry(String fullUrl, Observation resource) {}

    record Observation(
            String resourceType,
            String id,
            Narrative text,
            List<Identifier> identifier,
            String status,
            List<Concept> category,
            Concept code,
            Reference subject,
            String effectiveDateTime,
            Optional<String> issued,
            List<Reference> performer,
            Optional<Quantity> valueQuantity,
            Optional<Integer> valueInteger,
            Optional<String> valueString,
            Optional<Concept> dataAbsentReason,
            List<Annotation> note,
            Concept bodySite,
            Concept method,
            List<Range> referenceRange,
            List<Reference> derivedFrom) {}

    record Narrative(String status, String div) {
        static Narrative of(String sentence) {
            String safe = sentence.replace("&", "&amp;").replace("<", "&lt;").replace(">", "&gt;");
            return new Narrative("generated", "<div xmlns=\"http://www.w3.org/1999/xhtml\">" + safe + "</div>");
        }
    }

    record Identifier(String value) {}

    record Concept(List<Coding> coding, String text) {
        static Concept of(String system, String code, String display, String text) {
            return new Concept(List.of(new Coding(system, code, display)), text);
        }

        static Concept text(String text) {
            return new Concept(List.of(), text);
        }
    }

    record Coding(String system, String code, String display) {}

    record Reference(String reference, String type, Optional<Identifier> identifier, String display) {
        static Reference patient(String code) {
            return new Reference("", "Patient", Optional.of(new Identifier(code)), "");
        }

        static Reference display(String display) {
            return new Reference("", "", Optional.empty(), display);
        }

        static Reference to(String id) {
            return new Reference(url(id), "", Optional.empty(), "");
        }
    }

    record Quantity(BigDecimal value, String unit, String system, String code) {
        Quantity(BigDecimal value, String unit, String code) {
            this(value, unit, "http://unitsofmeasure.org", code);
        }
    }

    record Annotation(String text) {
        /** Notes are markdown, in which a bare angle bracket would begin a tag. */
        static Annotation of(String words) {
            return new Annotation(words.replace("<", "&lt;"));
        }
    }

    record Range(Optional<Quantity> low, Optional<Quantity> high, Concept type, String text) {}
}
