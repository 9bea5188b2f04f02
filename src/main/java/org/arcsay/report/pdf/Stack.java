package org.arcsay.report.pdf;

import java.util.List;

/** Blocks below each other that stay on one page, such as a heading and what it heads. */
record Stack(List<Block> blocks) implements Block {
    Stack {
        blocks = List.copyOf(blocks);
    }

    @Override
    public float height() {
        return total(blocks);
    }

    static float total(List<Block> blocks) {
        return (float) blocks.stream().mapToDouble(Block::height).sum();
    }

    @Override
    public void draw(Pen pen, float x, float y) {
        float top = y;
        for (Block block : blocks) {
            block.draw(pen, x, top);
            top += block.height();
        }
    }
}
