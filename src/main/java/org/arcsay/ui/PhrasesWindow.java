package org.arcsay.ui;

import java.util.List;
import javafx.scene.Scene;
import javafx.scene.control.Button;
import javafx.scene.input.KeyCode;
import javafx.scene.layout.BorderPane;
import javafx.scene.layout.FlowPane;
import javafx.scene.layout.VBox;
import javafx.stage.Stage;
import org.arcsay.model.HelpCard;

/** What can be said, from the grammar. JavaFX thread only. */
final class PhrasesWindow {
    private static final WindowFrame.Size SIZE = new WindowFrame.Size(1180, 760, 480, 400);

    private PhrasesWindow() {}

    static void show(Stage stage, HelpCard card, Look look) {
        LookButtons lookButtons = new LookButtons(look);
        Scene scene = WindowFrame.fill(
                stage, "What can be said \u2013 Arcsay", layout(stage, card, lookButtons), SIZE, lookButtons, () -> {});
        WindowFrame.onKey(scene, KeyCode.ESCAPE, stage::close);
        stage.show();
    }

    private static BorderPane layout(Stage stage, HelpCard card, LookButtons lookButtons) {
        FlowPane sections = new FlowPane();
        sections.getStyleClass().add("phrases");
        card.sections().stream().map(PhrasesWindow::section).forEach(sections.getChildren()::add);
        VBox head = WindowFrame.head(
                Parts.label("What can be said", "patient"),
                Parts.label(
                        "Examples; each stands for its kind. The same can be typed while measuring (F2). To print this card:"
                                + " arcsay phrases --pdf FILE",
                        "quiet"));
        Button close = Parts.strongButton("_Close", "Escape", stage::close);
        return WindowFrame.page(
                head,
                WindowFrame.scrolling(sections, "Examples of what can be said"),
                WindowFrame.foot(WindowFrame.buttons(List.of(close), lookButtons.lookOnly())));
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
