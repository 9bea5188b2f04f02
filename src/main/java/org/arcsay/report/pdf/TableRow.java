package org.arcsay.report.pdf;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * One row of a table with cells broken to the width of their columns.
 *
 * @param columns left edges of the cells and the right edge of the table
 * @param cells lines of every cell
 * @param emphasised which cells carry the mark of a change beyond measurement error
 * @param style of the text
 * @param shaded whether the row has a ground
 * @param padding above and below the text
 * @param head the row that is drawn again above it on a further page
 */
record TableRow(
        float[] columns,
        List<List<String>> cells,
        List<Boolean> emphasised,
        Style style,
        boolean shaded,
        float padding,
        Optional<Block> head)
        implements Block {
    private static final float PAD = 1.7f;
    private static final float MARK = 3.4f;

    /** The text of one cell. */
    record Text(String text, boolean emphasised) {
        static Text of(String text) {
            return new Text(text, false);
        }
    }

    static TableRow of(
            float[] columns,
            List<Text> texts,
            Style style,
            boolean shaded,
            float padding,
            Optional<Block> head,
            Typeface typeface) {
        List<List<String>> cells = new ArrayList<>();
        for (int i = 0; i < texts.size(); i++) {
            float width = columns[i + 1] - columns[i] - 2 * PAD - (texts.get(i).emphasised() ? MARK + 2 : 0);
            Style broken = texts.get(i).emphasised() ? bold(style) : style;
            cells.add(typeface.wrap(texts.get(i).text(), broken, width));
        }
        return new TableRow(
                columns, cells, texts.stream().map(Text::emphasised).toList(), style, shaded, padding, head);
    }

    private static Style bold(Style style) {
        return new Style(style.size(), true, 0);
    }

    @Override
    public float height() {
        int lines = cells.stream().mapToInt(List::size).max().orElse(1);
        return lines * style.lineHeight() + 2 * padding - 0.6f;
    }

    @Override
    public void draw(Pen pen, float x, float y) {
        if (shaded) {
            pen.fill(x, y, columns[columns.length - 1], height(), 0.92f);
        }
        for (int i = 0; i < cells.size(); i++) {
            drawCell(pen, i, x + columns[i] + PAD, y + padding);
        }
        pen.line(x, y + height(), x + columns[columns.length - 1], y + height(), 0.35f, 0.72f);
    }

    private void drawCell(Pen pen, int cell, float x, float y) {
        float left = x;
        if (emphasised.get(cell)) {
            pen.fill(x, y + style.size() * 0.5f, MARK, MARK, 0);
            left += MARK + 2;
        }
        float baseline = y + style.size();
        for (String line : cells.get(cell)) {
            pen.text(line, emphasised.get(cell) ? bold(style) : style, left, baseline);
            baseline += style.lineHeight();
        }
    }
}
