package org.arcsay.report.pdf;

import java.io.IOException;
import java.io.UncheckedIOException;
import org.apache.pdfbox.cos.COSArray;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.PDPageContentStream;
import org.apache.pdfbox.pdmodel.documentinterchange.logicalstructure.PDMarkedContentReference;
import org.apache.pdfbox.pdmodel.documentinterchange.logicalstructure.PDStructureElement;

/** Marks what is drawn on one page with its place in the structure of the document. For one thread. */
final class PageTags {
    private final Tags tags;
    private final PDPage page;
    private final PDPageContentStream stream;
    private final COSArray parents;
    private boolean inside;

    /**
     * @param parents takes the element of every marked piece of the page
     */
    PageTags(Tags tags, PDPage page, PDPageContentStream stream, COSArray parents) {
        this.tags = tags;
        this.page = page;
        this.stream = stream;
        this.parents = parents;
    }

    Tags document() {
        return tags;
    }

    /** Draws a part of an element; everything drawn meanwhile belongs to it. */
    void mark(PDStructureElement element, Runnable drawing) {
        if (inside) {
            drawing.run();
            return;
        }
        int number = parents.size();
        try {
            stream.beginMarkedContent(COSName.getPDFName(element.getStructureType()), number);
            drawInside(drawing);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        parents.add(element);
        PDMarkedContentReference reference = new PDMarkedContentReference();
        reference.setMCID(number);
        reference.setPage(page);
        element.appendKid(reference);
    }

    private void drawInside(Runnable drawing) throws IOException {
        inside = true;
        try {
            drawing.run();
        } finally {
            inside = false;
        }
        stream.endMarkedContent();
    }

    /** Whether what is drawn now belongs to an element, and is no mere ornament. */
    boolean isInside() {
        return inside;
    }

    /** Draws what is to be passed over, such as a head that is repeated. */
    void ornament(Runnable drawing) {
        try {
            stream.beginMarkedContent(COSName.ARTIFACT);
            drawInside(drawing);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
