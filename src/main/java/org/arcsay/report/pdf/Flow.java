package org.arcsay.report.pdf;

import java.io.IOException;
import java.util.List;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.PDPageContentStream;
import org.apache.pdfbox.pdmodel.common.PDRectangle;

/** Sets blocks one below the other and begins a new page when one does not fit. For one thread. */
final class Flow implements AutoCloseable {
    static final float MARGIN = 32;
    private static final float FOOT = 13;

    private final PDDocument document;
    private final Tags tags;
    private final Typeface typeface;
    private final PDRectangle paper;
    private final String continued;
    private Pen pen;
    private float y = MARGIN;

    /**
     * Begins on a new page.
     *
     * @param continued what stands at the top of every page but the first
     */
    Flow(PDDocument document, Tags tags, Typeface typeface, Paper paper, String continued) throws IOException {
        this.document = document;
        this.tags = tags;
        this.typeface = typeface;
        this.paper = paper.size();
        this.continued = continued;
        this.pen = newPage();
    }

    static float width(Paper paper) {
        return paper.size().getWidth() - 2 * MARGIN;
    }

    /** Room for blocks on the first page. */
    static float height(Paper paper) {
        return paper.size().getHeight() - 2 * MARGIN - FOOT;
    }

    private Pen newPage() throws IOException {
        PDPage page = new PDPage(paper);
        document.addPage(page);
        PDPageContentStream stream = new PDPageContentStream(document, page);
        return new Pen(stream, tags.page(page, stream), typeface, paper.getHeight());
    }

    void add(Block block) throws IOException {
        if (y + block.height() > paper.getHeight() - MARGIN - FOOT && y > MARGIN) {
            turnPage();
            block.head().ifPresent(head -> pen.again(() -> place(head)));
        }
        place(block);
    }

    private void place(Block block) {
        block.draw(pen, MARGIN, y);
        y += block.height();
    }

    void addAll(List<? extends Block> blocks) throws IOException {
        for (Block block : blocks) {
            add(block);
        }
    }

    private void turnPage() throws IOException {
        pen.close();
        pen = newPage();
        y = MARGIN;
        pen.text(continued, Style.SMALL_BOLD, MARGIN, y);
        y += 12;
    }

    @Override
    public void close() throws IOException {
        pen.close();
    }
}
