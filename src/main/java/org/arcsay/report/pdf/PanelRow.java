package org.arcsay.report.pdf;

import java.util.List;
import java.util.stream.Collectors;

/**
 * Panels over the visits side by side.
 *
 * @param panels one to three
 * @param width room for all of them
 * @param height room from top to bottom
 */
record PanelRow(List<RangePanel> panels, float width, float height) implements Block {
    PanelRow {
        panels = List.copyOf(panels);
    }

    @Override
    public void draw(Pen pen, float x, float y) {
        String words = panels.stream().map(panel -> panel.trend().title()).collect(Collectors.joining("; "));
        pen.figure(
                "Range of motion over the visits, drawn; told in words below: " + words, () -> drawPanels(pen, x, y));
    }

    private void drawPanels(Pen pen, float x, float y) {
        float each = width / 3;
        for (int i = 0; i < panels.size(); i++) {
            panels.get(i).draw(pen, x + i * each, y, each - 8, height);
        }
    }
}
