package org.arcsay.ui;

import javafx.scene.Scene;
import javafx.scene.control.Button;
import javafx.scene.control.ScrollPane;
import javafx.scene.input.KeyCode;
import javafx.scene.input.KeyCodeCombination;
import javafx.scene.layout.BorderPane;
import javafx.scene.layout.FlowPane;
import javafx.scene.layout.VBox;
import javafx.stage.Stage;
import org.arcsay.model.HelpCard;

/** What can be said, from the grammar. JavaFX thread only. */
final class PhrasesWindow {
    private PhrasesWindow() {}

    static void show(Stage stage, HelpCard card, Look look) {
        LookButtons lookButtons = new LookButtons(look);
        Scene scene = new Scene(layout(stage, card, lookButtons), 1180, 760);
        lookButtons.attach(scene, () -> {});
        scene.getAccelerators().put(new KeyCodeCombination(KeyCode.ESCAPE), stage::close);
        stage.setScene(scene);
        stage.setTitle("What can be said \u2013 Arcsay");
        stage.setMinWidth(480);
        stage.setMinHeight(400);
        stage.show();
    }

    private static BorderPane layout(Stage stage, HelpCard card, LookButtons lookButtons) {
        FlowPane sections = new FlowPane();
        sections.getStyleClass().add("phrases");
        card.sections().stream().map(PhrasesWindow::section).forEach(sections.getChildren()::add);
        ScrollPane scroll = new ScrollPane(sections);
        scroll.setFitToWidth(true);
        scroll.getStyleClass().add("detail-scroll");
        scroll.setAccessibleText("Examples of what can be said");
        VBox head = new VBox(
                Parts.label("What can be said", "patient"),
                Parts.label(
                        "Examples; each stands for its kind. The same can be typed while measuring (F2). To print this card:"
                                + " arcsay phrases --pdf FILE",
                        "quiet"));
        head.getStyleClass().add("head");
        Button close = Parts.strongButton("_Close", "Escape", stage::close);
        FlowPane foot = new FlowPane(close);
        foot.getChildren().addAll(lookButtons.lookOnly());
        foot.getStyleClass().addAll("foot", "chips");
        BorderPane root = new BorderPane(scroll);
        root.setTop(head);
        root.setBottom(foot);
        return root;
    }

    private static VBox section(HelpCard.Section section) {
        VBox box = new VBox(2, Parts.heading(section.heading()));
        section.examples().stream()
                .map(example -> Parts.label("\u201c" + example + "\u201d"))
                .forEach(box.getChildren()::add);
        box.getStyleClass().add("phrase-section");
        return box;
    }
}
