package org.arcsay.report.pdf;

import java.util.List;
import org.arcsay.model.Side;

/**
 * Dials side by side.
 *
 * @param dials one to four
 * @param width room for all of them
 */
record DialRow(List<Dial> dials, float width) implements Block {
    DialRow {
        dials = List.copyOf(dials);
    }

    @Override
    public float height() {
        return Dial.HEIGHT;
    }

    @Override
    public void draw(Pen pen, float x, float y) {
        float each = width / 4;
        for (int i = 0; i < dials.size(); i++) {
            dials.get(i).draw(pen, x + i * each, y, each);
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
