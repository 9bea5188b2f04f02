package org.arcsay.ui;

import javafx.scene.AccessibleRole;
import javafx.scene.control.Label;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Region;
import org.arcsay.review.MeasuringState.Loudness;

/** Loudness as a row of steps that fill up, with its word. JavaFX thread only. */
final class LevelBar extends HBox {
    private static final int STEPS = 12;

    private final HBox steps = new HBox();
    private final Label words = Parts.label("");

    LevelBar() {
        getStyleClass().add("level");
        steps.getStyleClass().add("level-steps");
        for (int i = 0; i < STEPS; i++) {
            Region step = new Region();
            step.getStyleClass().add("level-step");
            steps.getChildren().add(step);
        }
        setAccessibleRole(AccessibleRole.PROGRESS_INDICATOR);
        getChildren().addAll(steps, words);
        show(Loudness.SILENT);
    }

    void show(Loudness level) {
        long full = Math.round(level.share() * STEPS);
        for (int i = 0; i < STEPS; i++) {
            Parts.style(steps.getChildren().get(i), "level-full", i < full);
        }
        words.setText("Sound: " + level.words());
        setAccessibleText("Loudness of the microphone: " + level.words());
    }
}
