package org.arcsay.report.json;

import java.io.IOException;
import java.io.OutputStream;
import org.arcsay.report.content.Report;
import org.arcsay.report.content.ReportWriter;

/** Writes the whole report, all visits and their journals as JSON; see {@code docs/schema/arcsay-report-1.schema.json}. */
public final class JsonWriter implements ReportWriter {
    @Override
    public void write(Report report, OutputStream out) throws IOException {
        JsonFiles.write(JsonReportMaker.make(report), out);
    }
}
