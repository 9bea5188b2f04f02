package org.arcsay.report.pdf;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.List;
import org.apache.pdfbox.pdmodel.PDPageContentStream;
import org.apache.pdfbox.pdmodel.documentinterchange.logicalstructure.PDStructureElement;
import org.apache.pdfbox.pdmodel.documentinterchange.taggedpdf.StandardStructureTypes;

/** Draws on one page, in points, with y counted from the top. For one thread. */
final class Pen implements AutoCloseable {
    private static final float SOLID = 0;

    private final PDPageContentStream stream;
    private final PageTags tags;
    private final Typeface typeface;
    private final float pageHeight;

    Pen(PDPageContentStream stream, PageTags tags, Typeface typeface, float pageHeight) {
        this.stream = stream;
        this.tags = tags;
        this.typeface = typeface;
        this.pageHeight = pageHeight;
    }

    private interface Drawing {
        void draw() throws IOException;
    }

    private void checked(Drawing drawing) {
        if (!tags.isInside()) {
            tags.ornament(() -> checked(drawing));
            return;
        }
        try {
            drawing.draw();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** Draws the next piece of the document, such as a paragraph. Without it, what is drawn is mere ornament. */
    void piece(String type, Runnable drawing) {
        tags.mark(tags.document().next(type), drawing);
    }

    /** Draws a further part of the piece before. */
    void more(Runnable drawing) {
        tags.mark(tags.document().last(), drawing);
    }

    /** Draws a picture with the words that stand for it. */
    void figure(String words, Runnable drawing) {
        PDStructureElement figure = tags.document().next(StandardStructureTypes.Figure);
        figure.setAlternateDescription(words);
        tags.mark(figure, drawing);
    }

    /** Begins the next row of a table; its cells follow. */
    PDStructureElement row() {
        return tags.document().row();
    }

    /**
     * Draws a cell of a row.
     *
     * @param cell made by {@link Tags#cell}
     */
    void cell(PDStructureElement cell, Runnable drawing) {
        tags.mark(cell, drawing);
    }

    /** Draws again what was drawn before. */
    void again(Runnable drawing) {
        tags.ornament(drawing);
    }

    Typeface typeface() {
        return typeface;
    }

    /** Writes with the baseline at y. */
    void text(String text, Style style, float x, float y) {
        checked(() -> {
            stream.beginText();
            stream.setNonStrokingColor(style.gray());
            stream.setFont(typeface.font(style), style.size());
            stream.newLineAtOffset(x, pageHeight - y);
            stream.showText(typeface.printable(text));
            stream.endText();
        });
    }

    /** Writes line below line, with a blank between them for whoever hears or copies the text. */
    void lines(List<String> lines, Style style, float x, float firstBaseline) {
        float baseline = firstBaseline;
        for (int i = 0; i < lines.size(); i++) {
            text(i == lines.size() - 1 ? lines.get(i) : lines.get(i) + " ", style, x, baseline);
            baseline += style.lineHeight();
        }
    }

    void textCentred(String text, Style style, float x, float y) {
        text(text, style, x - typeface.width(text, style) / 2, y);
    }

    void textRight(String text, Style style, float x, float y) {
        text(text, style, x - typeface.width(text, style), y);
    }

    /** Clears its ground first, so that no line runs through it. */
    void textOnWhite(String text, Style style, float x, float y) {
        fill(x - 0.6f, y - 0.78f * style.size(), typeface.width(text, style) + 1.2f, 0.88f * style.size(), 1);
        text(text, style, x, y);
    }

    void line(float x1, float y1, float x2, float y2, float width, float gray) {
        dashed(x1, y1, x2, y2, width, gray, SOLID);
    }

    /** A line of dashes and gaps of that length; 0 draws it solid. */
    void dashed(float x1, float y1, float x2, float y2, float width, float gray, float dash) {
        checked(() -> {
            stroke(width, gray, dash);
            stream.moveTo(x1, pageHeight - y1);
            stream.lineTo(x2, pageHeight - y2);
            stream.stroke();
        });
    }

    void fill(float x, float y, float width, float height, float gray) {
        checked(() -> {
            stream.setNonStrokingColor(gray);
            stream.addRect(x, pageHeight - y - height, width, height);
            stream.fill();
        });
    }

    void frame(float x, float y, float width, float height, float line, float gray) {
        checked(() -> {
            stroke(line, gray, SOLID);
            stream.addRect(x, pageHeight - y - height, width, height);
            stream.stroke();
        });
    }

    void dot(float x, float y, float radius, float gray) {
        checked(() -> {
            stream.setNonStrokingColor(gray);
            path(x, y, radius, 0, 360, true);
            stream.fill();
        });
    }

    /** Fills the ring between two radii from one angle to another. */
    void ring(float x, float y, float inner, float outer, Turn turn, float gray) {
        checked(() -> {
            stream.setNonStrokingColor(gray);
            ringPath(x, y, inner, outer, turn);
            stream.fill();
        });
    }

    void ringOutline(float x, float y, float inner, float outer, Turn turn, float width, float gray) {
        checked(() -> {
            stroke(width, gray, SOLID);
            ringPath(x, y, inner, outer, turn);
            stream.stroke();
        });
    }

    void arc(float x, float y, float radius, Turn turn, float width, float gray, float dash) {
        checked(() -> {
            stroke(width, gray, dash);
            path(x, y, radius, turn.from(), turn.to(), true);
            stream.stroke();
        });
    }

    /**
     * A sweep in degrees, 0 to the right and growing downwards.
     *
     * @param from where it begins
     * @param to where it ends
     */
    record Turn(float from, float to) {}

    private void stroke(float width, float gray, float dash) throws IOException {
        stream.setStrokingColor(gray);
        stream.setLineWidth(width);
        stream.setLineDashPattern(dash == SOLID ? new float[0] : new float[] {dash, dash}, 0);
    }

    private void ringPath(float x, float y, float inner, float outer, Turn turn) throws IOException {
        path(x, y, outer, turn.from(), turn.to(), true);
        path(x, y, inner, turn.to(), turn.from(), false);
        stream.closePath();
    }

    /** Short chords, three degrees each: finer than print. */
    private void path(float x, float y, float radius, float from, float to, boolean begin) throws IOException {
        int steps = Math.max(1, Math.round(Math.abs(to - from) / 3));
        for (int i = 0; i <= steps; i++) {
            double angle = Math.toRadians(from + (to - from) * i / steps);
            float px = x + radius * (float) Math.cos(angle);
            float py = pageHeight - (y + radius * (float) Math.sin(angle));
            if (i == 0 && begin) {
                stream.moveTo(px, py);
            } else {
                stream.lineTo(px, py);
            }
        }
    }

    @Override
    public void close() throws IOException {
        stream.close();
    }
}
