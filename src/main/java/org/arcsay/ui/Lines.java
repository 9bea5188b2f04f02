package org.arcsay.ui;

import javafx.scene.shape.Line;

/** Straight lines of drawings. JavaFX thread only. */
final class Lines {
    private Lines() {}

    static Line styled(String style) {
        Line line = new Line();
        line.getStyleClass().add(style);
        return line;
    }

    static void place(Line line, double fromX, double fromY, double toX, double toY) {
        line.setStartX(fromX);
        line.setStartY(fromY);
        line.setEndX(toX);
        line.setEndY(toY);
    }
}
