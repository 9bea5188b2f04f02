package org.arcsay.report.pdf;

import java.util.List;
import java.util.stream.Collectors;
import org.arcsay.model.Side;

/**
 * Dials side by side.
 *
 * @param dials one to four, drawn to one scale
 * @param width room for all of them
 * @param most as high as it may be
 */
record DialRow(List<Dial> dials, float width, float most) implements Block {
    private static final float TITLE = 12;
    private static final float AROUND = TITLE + 22;
    private static final int COLUMNS = 4;

    DialRow {
        dials = List.copyOf(dials);
    }

    @Override
    public float height() {
        return AROUND + radius() * (above() + below());
    }

    private float above() {
        return (float) dials.stream().mapToDouble(Dial::above).max().orElse(0);
    }

    private float below() {
        return (float) dials.stream().mapToDouble(Dial::below).max().orElse(1);
    }

    private float radius() {
        return Math.min(width / COLUMNS - Dial.BESIDE, (most - AROUND) / (above() + below()));
    }

    @Override
    public void draw(Pen pen, float x, float y) {
        String words = dials.stream().map(Dial::words).collect(Collectors.joining("; "));
        pen.figure("Range of motion now, drawn: " + words, () -> drawDials(pen, x, y));
    }

    private void drawDials(Pen pen, float x, float y) {
        float axis = y + TITLE + 6 + radius() * above();
        for (int i = 0; i < dials.size(); i++) {
            float left = x + i * width / COLUMNS;
            pen.text(dials.get(i).range().title(), Style.CELL_BOLD, left, y + 8);
            dials.get(i).draw(pen, left, axis, radius());
        }
    }

    /** What the three bands mean, drawn as they are. */
    record Key(Side side) implements Block {
        @Override
        public float height() {
            return 11;
        }

        @Override
        public void draw(Pen pen, float x, float y) {
            pen.piece(Style.SMALL.role(), () -> drawKey(pen, x, y));
        }

        private void drawKey(Pen pen, float x, float y) {
            float left = x;
            pen.fill(left, y + 1, 16, 6, 0.15f);
            left = word(pen, side.word() + ", active", left + 20, y);
            pen.fill(left, y + 2, 16, 4, 0.8f);
            pen.frame(left, y + 2, 16, 4, 0.5f, 0.35f);
            left = word(pen, side.other().word(), left + 20, y);
            pen.dashed(left, y + 4, left + 16, y + 4, 1.1f, 0.25f, 2.2f);
            left = word(pen, "mean of the norm set", left + 20, y);
            pen.dashed(left, y + 4, left + 16, y + 4, 0.6f, 0.45f, 1.6f);
            word(pen, "neutral; bent is below, beyond neutral above", left + 20, y);
        }

        private static float word(Pen pen, String word, float x, float y) {
            pen.text(word, Style.SMALL, x, y + 6.4f);
            return x + pen.typeface().width(word, Style.SMALL) + 14;
        }
    }
}
