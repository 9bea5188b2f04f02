package org.arcsay.report.pdf;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import javax.imageio.ImageIO;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.rendering.ImageType;
import org.apache.pdfbox.rendering.PDFRenderer;

/** Pages of a PDF as pictures, to be looked at on a screen. */
public final class PagePictures {
    private static final int DOTS_PER_INCH = 150;

    private PagePictures() {}

    /** Every page as a PNG picture of 150 dots to the inch. */
    public static List<byte[]> of(byte[] pdf) throws IOException {
        try (PDDocument document = Loader.loadPDF(pdf)) {
            PDFRenderer renderer = new PDFRenderer(document);
            List<byte[]> pictures = new ArrayList<>();
            for (int page = 0; page < document.getNumberOfPages(); page++) {
                ByteArrayOutputStream png = new ByteArrayOutputStream();
                ImageIO.write(renderer.renderImageWithDPI(page, DOTS_PER_INCH, ImageType.RGB), "png", png);
                pictures.add(png.toByteArray());
            }
            return pictures;
        }
    }
}
