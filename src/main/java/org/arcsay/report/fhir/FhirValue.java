package org.arcsay.report.fhir;

import java.math.BigDecimal;
import java.util.Optional;
import org.arcsay.model.Distance;
import org.arcsay.model.Value;
import org.arcsay.model.Value.Angle;
import org.arcsay.model.Value.Extension;
import org.arcsay.model.Value.Gap;
import org.arcsay.model.Value.NotTested;
import org.arcsay.model.Value.NotTestedReason;
import org.arcsay.model.Value.Score;
import org.arcsay.model.Value.Span;
import org.arcsay.model.Value.Unquantified;
import org.arcsay.report.fhir.FhirBundle.Concept;
import org.arcsay.report.fhir.FhirBundle.Quantity;

/**
 * A value as one of the elements that an observation may have.
 *
 * @param quantity an unsigned number with its unit
 * @param points a score, which has no unit
 * @param words a description without a number
 * @param absent why there is no value, from the code system that FHIR itself defines
 */
record FhirValue(
        Optional<Quantity> quantity, Optional<Integer> points, Optional<String> words, Optional<Concept> absent) {
    private static final String ABSENT = "http://terminology.hl7.org/CodeSystem/data-absent-reason";

    static FhirValue of(Value value) {
        if (value instanceof Angle angle) {
            return quantity(degrees(angle.degrees()));
        }
        if (value instanceof Extension extension) {
            return quantity(degrees(extension.degrees()));
        }
        if (value instanceof Gap gap) {
            return quantity(length(gap.distance()));
        }
        if (value instanceof Span span) {
            return quantity(length(span.distance()));
        }
        if (value instanceof Score score) {
            return new FhirValue(Optional.empty(), Optional.of(score.points()), Optional.empty(), Optional.empty());
        }
        if (value instanceof NotTested notTested) {
            return new FhirValue(Optional.empty(), Optional.empty(), Optional.empty(), Optional.of(absent(notTested)));
        }
        Unquantified described = (Unquantified) value;
        return new FhirValue(Optional.empty(), Optional.empty(), Optional.of(described.words()), Optional.empty());
    }

    static Quantity degrees(BigDecimal degrees) {
        return new Quantity(degrees, "degrees", "deg");
    }

    private static Quantity length(Distance distance) {
        return new Quantity(
                distance.amount(), distance.unit().symbol(), distance.unit().ucum());
    }

    private static FhirValue quantity(Quantity quantity) {
        return new FhirValue(Optional.of(quantity), Optional.empty(), Optional.empty(), Optional.empty());
    }

    private static Concept absent(NotTested notTested) {
        return notTested.reason() == NotTestedReason.DECLINED
                ? Concept.of(ABSENT, "asked-declined", "Asked But Declined", notTested.words())
                : Concept.of(ABSENT, "not-performed", "Not Performed", notTested.words());
    }
}
