package org.arcsay.report.pdf;

import java.io.IOException;
import java.io.OutputStream;
import java.util.ArrayList;
import java.util.GregorianCalendar;
import java.util.List;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.arcsay.model.HelpCard;

/** Writes the card of phrases as PDF, to be hung up beside the table. The same card gives the same bytes. */
public final class PhraseCard {
    private static final int COLUMNS = 2;
    private static final float GAP = 18;
    private static final long SAME_ALWAYS = 1;

    private final Paper paper;
    private final String program;

    /**
     * @param program name and version of the program, which stand on the card
     */
    public PhraseCard(Paper paper, String program) {
        this.paper = paper;
        this.program = program;
    }

    /** Writes the card and leaves the stream open. */
    public void write(HelpCard card, OutputStream out) throws IOException {
        try (PDDocument document = new PDDocument()) {
            Typeface typeface = new Typeface(document);
            Tags tags = new Tags(document);
            try (Flow flow = new Flow(document, tags, typeface, paper, "What can be said, continued")) {
                head(flow, typeface);
                flow.addAll(columns(card, typeface));
            }
            tags.complete();
            new Metadata("Arcsay: what can be said", program, new GregorianCalendar(2026, 0, 1)).into(document);
            document.setDocumentId(SAME_ALWAYS);
            document.save(out);
        }
        out.flush();
    }

    private void head(Flow flow, Typeface typeface) throws IOException {
        float width = Flow.width(paper);
        flow.add(Paragraph.of("What can be said", Style.TITLE, typeface, width));
        flow.add(Paragraph.of(
                program
                        + ". Examples; each stands for its kind. Say one thing, wait for the tone, say the next. An unusual"
                        + " value is asked about and never changed. Nothing is final before it was looked through and confirmed.",
                Style.LEAD,
                typeface,
                width));
        flow.add(Block.gap(8));
    }

    /** Sections fill the shorter column first, so that both end at about the same height. */
    private List<Block> columns(HelpCard card, Typeface typeface) {
        float width = (Flow.width(paper) - GAP) / COLUMNS;
        List<Block> left = new ArrayList<>();
        List<Block> right = new ArrayList<>();
        List<Block> rows = new ArrayList<>();
        for (HelpCard.Section section : card.sections()) {
            Block block = section(section, typeface, width);
            List<Block> shorter = Stack.total(left) <= Stack.total(right) ? left : right;
            if (Stack.total(shorter) + block.height() > Flow.height(paper) * 0.85f) {
                rows.add(new Beside(new Stack(left), new Stack(right), width + GAP));
                left.clear();
                right.clear();
                shorter = left;
            }
            shorter.add(block);
        }
        rows.add(new Beside(new Stack(left), new Stack(right), width + GAP));
        return rows;
    }

    private static Block section(HelpCard.Section section, Typeface typeface, float width) {
        List<Block> blocks = new ArrayList<>();
        blocks.add(Paragraph.of(section.heading(), Style.CARD_HEAD, typeface, width));
        for (String example : section.examples()) {
            blocks.add(Paragraph.of("\u201c" + example + "\u201d", Style.CARD, typeface, width));
        }
        blocks.add(Block.gap(11));
        return new Stack(blocks);
    }

    /** Two blocks with their tops at one height. */
    private record Beside(Block left, Block right, float step) implements Block {
        @Override
        public float height() {
            return Math.max(left.height(), right.height());
        }

        @Override
        public void draw(Pen pen, float x, float y) {
            left.draw(pen, x, y);
            right.draw(pen, x + step, y);
        }
    }
}
