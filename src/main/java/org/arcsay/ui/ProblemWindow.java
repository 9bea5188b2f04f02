package org.arcsay.ui;

import java.util.List;
import javafx.scene.Scene;
import javafx.scene.control.Button;
import javafx.scene.control.TextArea;
import javafx.scene.input.KeyCode;
import javafx.scene.input.KeyCodeCombination;
import javafx.scene.layout.BorderPane;
import javafx.scene.layout.VBox;
import javafx.stage.Stage;

/** Tells why the program cannot start, where no terminal shows it. JavaFX thread only. */
public final class ProblemWindow {
    private static final WindowFrame.Size SIZE = new WindowFrame.Size(820, 460, 560, 360);

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
        VBox head = WindowFrame.head(
                Parts.label("Arcsay cannot start", "patient"),
                Parts.label("Nothing was changed. This is what has to be seen to first:", "quiet"));
        VBox content = new VBox(words);
        content.getStyleClass().add("home");
        BorderPane root = WindowFrame.page(
                head, content, WindowFrame.foot(WindowFrame.buttons(List.of(close), lookButtons.lookOnly())));
        Scene scene = WindowFrame.fill(stage, "Arcsay cannot start", root, SIZE, lookButtons, () -> {});
        scene.getAccelerators().remove(new KeyCodeCombination(KeyCode.F3));
        WindowFrame.onKey(scene, KeyCode.ESCAPE, stage::close);
        stage.show();
        close.requestFocus();
    }
}
