package org.arcsay.report.fhir;

import java.io.IOException;
import java.io.OutputStream;
import java.time.format.DateTimeFormatter;
import org.arcsay.report.content.Report;
import org.arcsay.report.content.ReportWriter;
import org.arcsay.report.json.JsonFiles;

/**
 * Writes the reported visit as a FHIR R4 (4.0.1) bundle: an observation for each entry and each complete total.
 *
 * <p>Entries that wait for review are preliminary, confirmed ones final, ones changed after they had been confirmed amended
 * under the same id, and ones taken back entered-in-error. Units are UCUM; everything else without a sure code is text.
 */
public final class FhirWriter implements ReportWriter {
    private final FhirCodes codes;

    public FhirWriter(FhirCodes codes) {
        this.codes = codes;
    }

    @Override
    public void write(Report report, OutputStream out) throws IOException {
        ObservationMaker maker = new ObservationMaker(report, codes);
        JsonFiles.write(
                new FhirBundle(
                        maker.id("bundle"),
                        DateTimeFormatter.ISO_OFFSET_DATE_TIME.format(
                                report.source().createdAt()),
                        maker.observations()),
                out);
    }
}
