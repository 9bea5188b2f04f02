package org.arcsay.report.pdf;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.apache.pdfbox.pdmodel.documentinterchange.logicalstructure.PDStructureElement;

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
    /** What the mark means, for whoever does not see it. */
    private static final String BEYOND = "beyond measurement error";

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
            float width = columns[i + 1 == texts.size() ? columns.length - 1 : i + 1]
                    - columns[i]
                    - 2 * PAD
                    - (texts.get(i).emphasised() ? MARK + 2 : 0);
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
        PDStructureElement row = pen.row();
        for (int i = 0; i < cells.size(); i++) {
            int cell = i;
            PDStructureElement tag = Tags.cell(row, scope(i), span(i));
            if (emphasised.get(i)) {
                tag.setActualText(String.join(" ", cells.get(i)) + ", " + BEYOND);
            }
            pen.cell(tag, () -> drawCell(pen, cell, x + columns[cell] + PAD, y + padding));
        }
        pen.line(x, y + height(), x + columns[columns.length - 1], y + height(), 0.35f, 0.72f);
    }

    private String scope(int cell) {
        if (style.equals(Style.COLUMN)) {
            return "Column";
        }
        return cell == 0 ? "Row" : "";
    }

    /** The last cell reaches to the right edge of the table. */
    private int span(int cell) {
        return cell == cells.size() - 1 ? columns.length - 1 - cell : 1;
    }

    private void drawCell(Pen pen, int cell, float x, float y) {
        float left = x;
        if (emphasised.get(cell)) {
            pen.fill(x, y + style.size() * 0.5f, MARK, MARK, 0);
            left += MARK + 2;
        }
        pen.lines(cells.get(cell), emphasised.get(cell) ? bold(style) : style, left, y + style.size());
    }
}
