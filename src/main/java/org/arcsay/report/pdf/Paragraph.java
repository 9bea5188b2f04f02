package org.arcsay.report.pdf;

import java.util.List;

/** Lines of text of one style, already broken. */
record Paragraph(List<String> lines, Style style, float indent) implements Block {
    Paragraph {
        lines = List.copyOf(lines);
    }

    static Paragraph of(String text, Style style, Typeface typeface, float width) {
        return new Paragraph(typeface.wrap(text, style, width), style, 0);
    }

    /** A text that hangs beside its mark, such as a bullet or a number. */
    static Block hanging(String mark, String text, Style style, Typeface typeface, float width) {
        float indent = 11;
        Paragraph body = new Paragraph(typeface.wrap(text, style, width - indent), style, indent);
        return new Block() {
            @Override
            public float height() {
                return body.height();
            }

            @Override
            public void draw(Pen pen, float x, float y) {
                pen.text(mark, style, x, y + style.size());
                body.draw(pen, x, y);
            }
        };
    }

    @Override
    public float height() {
        return lines.size() * style.lineHeight();
    }

    @Override
    public void draw(Pen pen, float x, float y) {
        float baseline = y + style.size();
        for (String line : lines) {
            pen.text(line, style, x + indent, baseline);
            baseline += style.lineHeight();
        }
    }
}
