package org.arcsay.ui;

import javafx.scene.control.Label;
import javafx.scene.layout.FlowPane;
import javafx.scene.layout.VBox;
import org.arcsay.review.ReviewModel;

/** Says that a change is not saved and what can be done; takes no room while everything is saved. JavaFX thread only. */
final class UnsavedBanner extends VBox {
    private final ReviewModel model;
    private final Label message = Parts.label("", "state-held");

    UnsavedBanner(ReviewModel model, Runnable retry, Runnable discard) {
        this.model = model;
        getStyleClass().add("banner");
        message.setGraphic(Parts.mark("unsaved"));
        FlowPane buttons = new FlowPane(
                Parts.strongButton("Sa_ve change again", "Tries once more to store the last change", retry),
                Parts.button(
                        "D_iscard unsaved change", "Gives the last change up; typed text stays in its form", discard));
        buttons.getStyleClass().add("chips");
        getChildren().addAll(message, buttons);
        refresh();
    }

    void refresh() {
        Parts.show(this, model.unsaved().isPresent());
        model.unsaved()
                .ifPresent(unsaved ->
                        message.setText("Not saved yet: \u201c" + unsaved.change() + "\u201d " + unsaved.message()));
    }
}
