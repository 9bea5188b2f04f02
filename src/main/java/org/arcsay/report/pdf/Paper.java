package org.arcsay.report.pdf;

import org.apache.pdfbox.pdmodel.common.PDRectangle;

/** Sizes of paper. */
public enum Paper {
    /** 210 mm x 297 mm (ISO 216). */
    A4(PDRectangle.A4),
    /** 8.5 in x 11 in. */
    LETTER(PDRectangle.LETTER);

    private final PDRectangle size;

    Paper(PDRectangle size) {
        this.size = size;
    }

    PDRectangle size() {
        return size;
    }
}
