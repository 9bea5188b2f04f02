package org.arcsay.ui;

import javafx.scene.control.Label;
import javafx.scene.layout.Region;
import org.arcsay.model.Severity;
import org.arcsay.review.RowState;

/** Shape and word for every state and severity, so that no meaning rests on colour. */
final class Marks {
    private Marks() {}

    static Region of(RowState state) {
        Region mark = Parts.mark(shape(state));
        mark.setAccessibleText(state.words());
        return mark;
    }

    static Label labelled(RowState state) {
        Label label = Parts.label(state.words(), "state", "state-" + shape(state));
        label.setGraphic(of(state));
        return label;
    }

    static Label labelled(Severity severity) {
        String shape = shape(severity);
        Label label = Parts.label(word(severity), "state", "state-" + shape);
        label.setGraphic(Parts.mark(shape));
        return label;
    }

    static String shape(RowState state) {
        return switch (state) {
            case NOT_SAVED -> "unsaved";
            case HELD -> "held";
            case DOUBTFUL -> "doubt";
            case OPEN -> "open";
            case CONFIRMED -> "sure";
            case REJECTED -> "rejected";
        };
    }

    static String shape(Severity severity) {
        return switch (severity) {
            case HOLD -> "held";
            case ASK -> "doubt";
            case NOTE -> "open";
        };
    }

    private static String word(Severity severity) {
        return switch (severity) {
            case HOLD -> "Held";
            case ASK -> "Check";
            case NOTE -> "Note";
        };
    }
}
