package org.arcsay.report.pdf;

import java.io.IOException;
import java.io.OutputStream;
import java.util.GregorianCalendar;
import java.util.List;
import java.util.stream.Stream;
import org.apache.pdfbox.cos.COSArray;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.PDPageContentStream;
import org.apache.pdfbox.pdmodel.PDPageContentStream.AppendMode;
import org.arcsay.model.Side;
import org.arcsay.report.content.Report;
import org.arcsay.report.content.ReportSource;
import org.arcsay.report.content.ReportWriter;

/**
 * Writes the reported visit as PDF: one page for each thumb that was measured, the right one first. The same report gives the
 * same bytes. The document is tagged for screen readers (PDF/UA-1, ISO 14289-1).
 */
public final class PdfWriter implements ReportWriter {
    private final Paper paper;

    public PdfWriter(Paper paper) {
        this.paper = paper;
    }

    @Override
    public void write(Report report, OutputStream out) throws IOException {
        try (PDDocument document = new PDDocument()) {
            Typeface typeface = new Typeface(document);
            Tags tags = new Tags(document);
            for (Side side : sides(report)) {
                thumb(document, tags, typeface, report, side);
            }
            feet(document, tags, typeface, report);
            tags.complete();
            metadata(report).into(document);
            document.setDocumentId(report.source().createdAt().toEpochSecond());
            document.save(out);
        }
        out.flush();
    }

    /** The hands that were measured; the right one when none was, so that there is always a page. */
    private static List<Side> sides(Report report) {
        return report.sides().isEmpty() ? List.of(Side.RIGHT) : report.sides();
    }

    private void thumb(PDDocument document, Tags tags, Typeface typeface, Report report, Side side) throws IOException {
        String continued = "Patient " + report.current().visit().patient() + ", " + side.word() + " " + report.part()
                + ", continued";
        try (Flow flow = new Flow(document, tags, typeface, paper, continued)) {
            flow.addAll(blocks(report, side, typeface));
        }
    }

    /** With as much room as one page leaves; what needs two pages even when set closely has all the room it wants. */
    private List<Block> blocks(Report report, Side side, Typeface typeface) {
        return Stream.of(true, false)
                .flatMap(longer -> Density.falling().map(density -> page(report, side, typeface, density, longer)))
                .filter(blocks -> Stack.total(blocks) <= Flow.height(paper))
                .findFirst()
                .orElseGet(() -> page(report, side, typeface, Density.ROOMY, true));
    }

    private List<Block> page(Report report, Side side, Typeface typeface, Density density, boolean longer) {
        return new ThumbPage(report, side, typeface, Flow.width(paper), density, longer).blocks();
    }

    private void feet(PDDocument document, Tags tags, Typeface typeface, Report report) throws IOException {
        ReportSource source = report.source();
        float bottom = paper.size().getHeight() - Flow.MARGIN;
        float right = paper.size().getWidth() - Flow.MARGIN;
        int pages = document.getNumberOfPages();
        for (int i = 0; i < pages; i++) {
            PDPage page = document.getPage(i);
            PDPageContentStream stream = new PDPageContentStream(document, page, AppendMode.APPEND, true);
            PageTags unused = new PageTags(tags, page, stream, new COSArray());
            try (Pen pen = new Pen(stream, unused, typeface, paper.size().getHeight())) {
                pen.line(Flow.MARGIN, bottom - 9, right, bottom - 9, 0.4f, 0.6f);
                pen.text(
                        "Patient " + report.current().visit().patient() + "   ·   "
                                + report.standing().code() + "   ·   " + source.program() + ", report of "
                                + Wording.minute(source.createdAt()),
                        Style.SMALL,
                        Flow.MARGIN,
                        bottom);
                pen.textRight("page " + (i + 1) + " of " + pages, Style.SMALL, right, bottom);
            }
        }
    }

    private static Metadata metadata(Report report) {
        return new Metadata(
                "Range of motion, patient " + report.current().visit().patient(),
                report.source().program(),
                GregorianCalendar.from(report.source().createdAt().toZonedDateTime()));
    }
}
