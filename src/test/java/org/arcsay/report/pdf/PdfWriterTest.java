package org.arcsay.report.pdf;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.OptionalInt;
import javax.imageio.ImageIO;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.common.PDRectangle;
import org.apache.pdfbox.pdmodel.font.PDFont;
import org.apache.pdfbox.rendering.ImageType;
import org.apache.pdfbox.rendering.PDFRenderer;
import org.apache.pdfbox.text.PDFTextStripper;
import org.arcsay.model.Measure;
import org.arcsay.model.Motion;
import org.arcsay.model.Remark;
import org.arcsay.model.Side;
import org.arcsay.model.Value.Angle;
import org.arcsay.report.content.DemoCase;
import org.arcsay.report.content.FullSeries;
import org.arcsay.report.content.Golden;
import org.arcsay.report.content.Report;
import org.arcsay.report.content.VisitScript;
import org.arcsay.report.content.Written;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

class PdfWriterTest {
    private static final float DPI = 110;

    @Test
    void theSameReportGivesTheSameBytes() {
        assertArrayEquals(pdf(DemoCase.report()), pdf(DemoCase.report()));
    }

    @Test
    void thePagesLookAsBefore() throws IOException {
        try (PDDocument document = Loader.loadPDF(pdf(DemoCase.report()))) {
            assertLooksLike("report-right.png", picture(document, 0));
            assertLooksLike("report-left.png", picture(document, 1));
        }
    }

    @Test
    void theTextCanBeSelectedAndReadsAsBefore() throws IOException {
        Golden.assertText("report.pdf.txt", text(pdf(DemoCase.report())).getBytes(StandardCharsets.UTF_8));
    }

    @ParameterizedTest
    @EnumSource(Paper.class)
    void eachThumbHasOnePageOfTheRightSize(Paper paper) throws IOException {
        try (PDDocument document = Loader.loadPDF(Written.bytes(new PdfWriter(paper), DemoCase.report()))) {
            assertEquals(2, document.getNumberOfPages());
            PDRectangle size = document.getPage(0).getMediaBox();
            assertEquals(paper == Paper.A4 ? 595 : 612, Math.round(size.getWidth()));
            assertEquals(paper == Paper.A4 ? 842 : 792, Math.round(size.getHeight()));
        }
    }

    /** Every step of the full thumb series, for both hands, with remarks, over several visits. */
    @ParameterizedTest
    @EnumSource(Paper.class)
    void theFullSeriesWithRemarksHasOnePageForEachThumb(Paper paper) throws IOException {
        for (int visits : new int[] {1, 5, 200}) {
            Report report = Report.of(DemoCase.source(FullSeries.visits(visits)));
            try (PDDocument document = Loader.loadPDF(Written.bytes(new PdfWriter(paper), report))) {
                assertEquals(2, document.getNumberOfPages(), visits + " visits");
            }
        }
    }

    @Test
    void theTableThatGoesOverThePageHasItsHeadAgain() throws IOException {
        VisitScript script = new VisitScript(1, "demo-08", "2026-04-01T08:00:00+02:00").hand(Side.RIGHT);
        for (int repeat = 0; repeat < 110; repeat++) {
            script.angle(repeat % 2 == 0 ? "IP" : "MP", Motion.FLEXION, 30 + repeat / 2);
        }
        String text = text(pdf(Report.of(DemoCase.source(List.of(script.record())))));

        assertEquals(2, text.split("Norm, mean", -1).length - 1, text);
    }

    @Test
    void everyFontIsEmbedded() throws IOException {
        try (PDDocument document = Loader.loadPDF(pdf(DemoCase.report()))) {
            for (PDPage page : document.getPages()) {
                for (COSName name : page.getResources().getFontNames()) {
                    PDFont font = page.getResources().getFont(name);
                    assertTrue(font.isEmbedded(), font.getName());
                    assertNotNull(font.getCOSObject().getDictionaryObject(COSName.TO_UNICODE), font.getName());
                }
            }
        }
    }

    @Test
    void noColourIsUsed() throws IOException {
        try (PDDocument document = Loader.loadPDF(pdf(DemoCase.report()))) {
            BufferedImage image = new PDFRenderer(document).renderImageWithDPI(0, 60, ImageType.RGB);
            for (int i = 0; i < image.getWidth() * image.getHeight(); i++) {
                int rgb = image.getRGB(i % image.getWidth(), i / image.getWidth());
                assertTrue((rgb >> 16 & 255) == (rgb & 255) && (rgb >> 8 & 255) == (rgb & 255), "colour at pixel " + i);
            }
        }
    }

    @Test
    void accentsAndLongRemarksSurviveAndUnknownCharactersAreNamed() throws IOException {
        String longWord = "Ödem".repeat(60);
        VisitScript script = new VisitScript(1, "demo-08", "2026-04-01T08:00:00+02:00").hand(Side.RIGHT);
        script.take(Measure.of("IP", Motion.FLEXION), Angle.of(40))
                .remark(new Remark.Note("naïve Größe, łódź, Čapek, ngón tay cái ấn, αβγ, \u65E5"))
                .remark(new Remark.Note(longWord))
                .remark(new Remark.Pain(Remark.PainPlace.PRESENT, OptionalInt.empty()));

        String text = text(pdf(Report.of(DemoCase.source(List.of(script.record())))));

        assertTrue(text.contains("naïve Größe, łódź, Čapek, ngón tay cái ấn, αβγ, [U+65E5]"), text);
        assertTrue(text.replaceAll("\\s", "").contains(longWord), text);
    }

    @Test
    void aSeriesTooLongForOnePageGoesOnWithNothingLost() throws IOException {
        VisitScript script = new VisitScript(1, "demo-08", "2026-04-01T08:00:00+02:00").hand(Side.RIGHT);
        String note = "remark ".repeat(70).strip();
        for (Motion motion :
                List.of(Motion.FLEXION, Motion.RADIAL_ABDUCTION, Motion.PALMAR_ABDUCTION, Motion.ADDUCTION)) {
            for (String site : List.of("IP", "MP", "CMC")) {
                script.angle(site, motion, 40).remark(new Remark.Note(note)).remark(new Remark.Note(note));
            }
        }
        byte[] pdf = pdf(Report.of(DemoCase.source(List.of(script.record()))));
        try (PDDocument document = Loader.loadPDF(pdf)) {
            assertTrue(document.getNumberOfPages() > 1);
        }

        String text = text(pdf).replaceAll("\\s+", " ");

        assertEquals(12 * 2 * 70, text.split("\\bremark\\b", -1).length - 1);
        assertTrue(text.contains("thumb, continued"), text);
        assertTrue(text.contains("not a certified medical device"), text);
    }

    @Test
    void aVisitWithoutReadingsStillHasAPage() throws IOException {
        VisitScript empty = new VisitScript(1, "demo-08", "2026-04-01T08:00:00+02:00");

        assertTrue(
                text(pdf(Report.of(DemoCase.source(List.of(empty.record()))))).contains("PRELIMINARY"));
    }

    private static byte[] pdf(Report report) {
        return Written.bytes(new PdfWriter(Paper.A4), report);
    }

    private static String text(byte[] pdf) throws IOException {
        try (PDDocument document = Loader.loadPDF(pdf)) {
            PDFTextStripper stripper = new PDFTextStripper();
            stripper.setSortByPosition(true);
            stripper.setLineSeparator("\n");
            return stripper.getText(document);
        }
    }

    private static BufferedImage picture(PDDocument document, int page) throws IOException {
        return new PDFRenderer(document).renderImageWithDPI(page, DPI, ImageType.GRAY);
    }

    /** At most one pixel in five hundred may differ by more than a tenth of the way from black to white. */
    private static void assertLooksLike(String name, BufferedImage actual) throws IOException {
        ByteArrayOutputStream png = new ByteArrayOutputStream();
        ImageIO.write(actual, "png", png);
        BufferedImage expected = ImageIO.read(new ByteArrayInputStream(Golden.expected(name, png.toByteArray())));
        assertEquals(expected.getWidth(), actual.getWidth());
        assertEquals(expected.getHeight(), actual.getHeight());
        int different = 0;
        for (int y = 0; y < actual.getHeight(); y++) {
            for (int x = 0; x < actual.getWidth(); x++) {
                int difference = Math.abs((actual.getRGB(x, y) & 255) - (expected.getRGB(x, y) & 255));
                different += difference > 25 ? 1 : 0;
            }
        }
        int allowed = actual.getWidth() * actual.getHeight() / 500;
        assertTrue(different <= allowed, name + ": " + different + " pixels differ, " + allowed + " may");
    }
}
