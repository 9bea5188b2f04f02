package org.arcsay.report;

import java.io.BufferedOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import org.arcsay.report.content.Report;
import org.arcsay.report.content.ReportWriter;
import org.arcsay.report.csv.CsvWriter;
import org.arcsay.report.fhir.FhirCodes;
import org.arcsay.report.fhir.FhirWriter;
import org.arcsay.report.json.JsonWriter;
import org.arcsay.report.pdf.Paper;
import org.arcsay.report.pdf.PdfWriter;
import org.arcsay.report.text.TextWriter;
import org.arcsay.store.DurableFiles;
import org.arcsay.store.StoreException;

/**
 * Writes reports in every format.
 *
 * @param paper the size of PDF pages
 * @param codes the clinic's codes for FHIR
 */
public record ReportWriters(Paper paper, FhirCodes codes) {
    /** A4, and no codes beyond those that are sure. */
    public static ReportWriters standard() {
        return new ReportWriters(Paper.A4, FhirCodes.none());
    }

    /**
     * Writes to a stream and leaves it open.
     *
     * @throws IOException when the stream cannot take it
     */
    public void write(Report report, Format format, OutputStream out) throws IOException {
        writer(format).write(report, out);
    }

    /**
     * Writes a file that only its owner may read. It is complete under its name, or not there at all; a file that had the name
     * is replaced in the last step.
     *
     * @throws StoreException when it could not be written, with a message that says why and what to do
     */
    public void write(Report report, Format format, Path file) throws StoreException {
        DurableFiles.replace(file.toAbsolutePath(), unfinished -> {
            try (OutputStream out = new BufferedOutputStream(Files.newOutputStream(unfinished))) {
                writer(format).write(report, out);
            }
        });
    }

    private ReportWriter writer(Format format) {
        return switch (format) {
            case TEXT -> new TextWriter();
            case CSV -> new CsvWriter();
            case JSON -> new JsonWriter();
            case FHIR -> new FhirWriter(codes);
            case PDF -> new PdfWriter(paper);
        };
    }
}
