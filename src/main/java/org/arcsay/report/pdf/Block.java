package org.arcsay.report.pdf;

import java.util.Optional;

/** A piece of a page that is never broken. */
interface Block {
    float height();

    /** Draws itself with its top left corner there. */
    void draw(Pen pen, float x, float y);

    /** What is drawn above it again when it is the first on a further page, such as the head of its table. */
    default Optional<Block> head() {
        return Optional.empty();
    }

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
