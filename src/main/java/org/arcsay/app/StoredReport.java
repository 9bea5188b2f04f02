package org.arcsay.app;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.OffsetDateTime;
import org.arcsay.analysis.Customs;
import org.arcsay.model.ClinicSettings;
import org.arcsay.report.Format;
import org.arcsay.report.ReportWriters;
import org.arcsay.report.StoredVisits;
import org.arcsay.report.content.Report;
import org.arcsay.report.content.ReportSource;
import org.arcsay.report.pdf.PagePictures;
import org.arcsay.review.HomeException;
import org.arcsay.review.VisitReport;
import org.arcsay.store.StoreException;
import org.arcsay.store.VisitStore;

/**
 * The report of a stored visit. Any thread may use it.
 *
 * @param customs how is compared
 */
record StoredReport(VisitStore store, ClinicSettings clinic, Customs customs) implements VisitReport {
    private static final ReportWriters WRITERS = ReportWriters.standard();

    @Override
    public Pages show(long visit) throws HomeException {
        try {
            Report report = report(visit);
            return new Pages(
                    PagePictures.of(bytes(report, Format.PDF)),
                    new String(bytes(report, Format.TEXT), StandardCharsets.UTF_8),
                    report.fileName(Format.PDF.extension()));
        } catch (StoreException | IOException e) {
            throw new HomeException("The report cannot be shown: " + e.getMessage(), e);
        }
    }

    @Override
    public void save(long visit, Path file) throws HomeException {
        try {
            WRITERS.write(report(visit), Format.PDF, file);
        } catch (StoreException e) {
            throw new HomeException(String.valueOf(e.getMessage()), e);
        }
    }

    private Report report(long visit) throws StoreException {
        return Report.of(new ReportSource(
                StoredVisits.upTo(store, store.visit(visit).orElseThrow()),
                clinic,
                customs,
                OffsetDateTime.now().withNano(0),
                Program.NAME));
    }

    private static byte[] bytes(Report report, Format format) throws IOException {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        WRITERS.write(report, format, bytes);
        return bytes.toByteArray();
    }
}
