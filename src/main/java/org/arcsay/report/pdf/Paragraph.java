package org.arcsay.report.pdf;

import java.util.ArrayList;
import java.util.List;

/** Lines of text of one style, already broken. */
record Paragraph(List<String> lines, Style style, float indent) implements Block {
    private static final float INDENT = 11;

    Paragraph {
        lines = List.copyOf(lines);
    }

    static Paragraph of(String text, Style style, Typeface typeface, float width) {
        return new Paragraph(typeface.wrap(text, style, width), style, 0);
    }

    /** A text that hangs beside its mark, line by line, so that a page may end within it. */
    static List<Block> hanging(String mark, String text, Style style, Typeface typeface, float width) {
        List<Block> blocks = new ArrayList<>();
        for (String line : typeface.wrap(text, style, width - INDENT)) {
            Paragraph body = new Paragraph(List.of(line), style, INDENT);
            blocks.add(blocks.isEmpty() ? new Marked(mark, body) : new Rest(body));
        }
        return blocks;
    }

    @Override
    public float height() {
        return lines.size() * style.lineHeight();
    }

    @Override
    public void draw(Pen pen, float x, float y) {
        pen.piece(style.role(), () -> lines(pen, x, y));
    }

    private void lines(Pen pen, float x, float y) {
        pen.lines(lines, style, x + indent, y + style.size());
    }

    /** A paragraph with a mark at its left. */
    private record Marked(String mark, Paragraph body) implements Block {
        @Override
        public float height() {
            return body.height();
        }

        @Override
        public void draw(Pen pen, float x, float y) {
            pen.piece(body.style().role(), () -> {
                pen.text(mark, body.style(), x, y + body.style().size());
                body.lines(pen, x, y);
            });
        }
    }

    /** A further line of the paragraph before. */
    private record Rest(Paragraph body) implements Block {
        @Override
        public float height() {
            return body.height();
        }

        @Override
        public void draw(Pen pen, float x, float y) {
            pen.more(() -> body.lines(pen, x, y));
        }
    }
}
