package org.arcsay.ui;

import javafx.scene.Scene;
import javafx.scene.control.Button;
import javafx.scene.control.TextArea;
import javafx.scene.input.KeyCode;
import javafx.scene.input.KeyCodeCombination;
import javafx.scene.layout.BorderPane;
import javafx.scene.layout.FlowPane;
import javafx.scene.layout.VBox;
import javafx.stage.Stage;

/** Tells why the program cannot start, where no terminal shows it. JavaFX thread only. */
public final class ProblemWindow {
    private ProblemWindow() {}

    /**
     * Shows the message and returns when the window was closed. To be called once, from the main thread, when no other window was
     * opened.
     *
     * @param message what happened and what to do
     * @throws NoScreenException when no window can be opened here
     */
    public static void run(String message) throws NoScreenException {
        WindowHost.run(stage -> show(stage, message, Look.standard()));
    }

    static void show(Stage stage, String message, Look look) {
        TextArea words = new TextArea(message);
        words.setEditable(false);
        words.setWrapText(true);
        words.setPrefRowCount(8);
        words.setAccessibleText(message);
        Button close = Parts.strongButton("_Close", "Enter or Escape", stage::close);
        close.setDefaultButton(true);
        LookButtons lookButtons = new LookButtons(look);
        VBox head = new VBox(
                Parts.label("Arcsay cannot start", "patient"),
                Parts.label("Nothing was changed. This is what has to be seen to first:", "quiet"));
        head.getStyleClass().add("head");
        VBox content = new VBox(words);
        content.getStyleClass().add("home");
        FlowPane foot = new FlowPane(close);
        foot.getChildren().addAll(lookButtons.lookOnly());
        foot.getStyleClass().addAll("foot", "chips");
        BorderPane root = new BorderPane(content);
        root.setTop(head);
        root.setBottom(foot);
        Scene scene = new Scene(root, 820, 460);
        lookButtons.attach(scene, () -> {});
        scene.getAccelerators().remove(new KeyCodeCombination(KeyCode.F3));
        scene.getAccelerators().put(new KeyCodeCombination(KeyCode.ESCAPE), stage::close);
        stage.setScene(scene);
        stage.setTitle("Arcsay cannot start");
        stage.setMinWidth(560);
        stage.setMinHeight(360);
        stage.show();
        close.requestFocus();
    }
}
