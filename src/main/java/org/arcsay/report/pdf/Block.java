package org.arcsay.report.pdf;

/** A piece of a page that is never broken. */
interface Block {
    float height();

    /** Draws itself with its top left corner there. */
    void draw(Pen pen, float x, float y);

    static Block gap(float height) {
        return new Block() {
            @Override
            public float height() {
                return height;
            }

            @Override
            public void draw(Pen pen, float x, float y) {
                // nothing but room
            }
        };
    }
}
