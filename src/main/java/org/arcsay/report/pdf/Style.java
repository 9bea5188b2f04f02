package org.arcsay.report.pdf;

import org.apache.pdfbox.pdmodel.documentinterchange.taggedpdf.StandardStructureTypes;

/**
 * How a text looks.
 *
 * @param size in points
 * @param bold whether it is semibold
 * @param gray 0 for black to 1 for white
 */
record Style(float size, boolean bold, float gray) {
    static final Style TITLE = new Style(17, true, 0);
    static final Style LEAD = new Style(9, false, 0.2f);
    static final Style SECTION = new Style(8.6f, true, 0);
    static final Style CELL = new Style(7.4f, false, 0);
    static final Style CELL_BOLD = new Style(7.4f, true, 0);
    static final Style COLUMN = new Style(6.6f, true, 0.25f);
    static final Style NOTE = new Style(7f, false, 0.1f);
    static final Style SMALL = new Style(6.5f, false, 0.2f);
    static final Style SMALL_BOLD = new Style(6.5f, true, 0.15f);
    static final Style STAMP = new Style(9, true, 0);
    static final Style CARD_HEAD = new Style(12.5f, true, 0);
    static final Style CARD = new Style(12.5f, false, 0.1f);

    /** What a text in this style is in the structure of the document. */
    String role() {
        if (equals(TITLE)) {
            return StandardStructureTypes.H1;
        }
        return equals(SECTION) || equals(CARD_HEAD) ? StandardStructureTypes.H2 : StandardStructureTypes.P;
    }

    float lineHeight() {
        return size * 1.3f;
    }
}
