package org.arcsay.report.content;

import java.io.IOException;
import java.io.OutputStream;

/** Writes a report in one format. Implementations keep nothing between calls, so that any thread may use them. */
@FunctionalInterface
public interface ReportWriter {
    /**
     * Writes the whole report and flushes, but leaves the stream open.
     *
     * @throws IOException when the stream cannot take it
     */
    void write(Report report, OutputStream out) throws IOException;
}
