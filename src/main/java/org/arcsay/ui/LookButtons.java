package org.arcsay.ui;

import java.util.List;
import javafx.scene.Scene;
import javafx.scene.control.Button;
import javafx.scene.input.KeyCode;
import javafx.stage.Stage;

/** Lets the user choose theme and text size and see the phrases in any window. JavaFX thread only. */
final class LookButtons {
    private final Look look;
    private final Button theme;
    private final Button size;
    private final Button phrases = Parts.button("Show _phrases", "F3. Examples of what can be said", this::showPhrases);
    private Runnable apply = () -> {};

    LookButtons(Look look) {
        this.look = look;
        theme = Parts.button("", "Control D", this::switchTheme);
        size = Parts.button("", "Control plus and Control minus do the same in both directions", this::nextSize);
        name();
    }

    List<Button> buttons() {
        return List.of(phrases, theme, size);
    }

    /** Without the way to the phrases, for the window that shows them. */
    List<Button> lookOnly() {
        return List.of(theme, size);
    }

    private void showPhrases() {
        PhrasesWindow.show(new Stage(), look.card(), look);
    }

    /**
     * @param after runs after every change of the look
     */
    void attach(Scene scene, Runnable after) {
        apply = () -> {
            look.apply(scene);
            after.run();
        };
        apply.run();
        WindowFrame.onKey(scene, KeyCode.F3, this::showPhrases);
        WindowFrame.onControl(scene, KeyCode.D, this::switchTheme);
        WindowFrame.onControl(scene, KeyCode.PLUS, this::larger);
        WindowFrame.onControl(scene, KeyCode.EQUALS, this::larger);
        WindowFrame.onControl(scene, KeyCode.ADD, this::larger);
        WindowFrame.onControl(scene, KeyCode.MINUS, this::smaller);
        WindowFrame.onControl(scene, KeyCode.SUBTRACT, this::smaller);
    }

    private void switchTheme() {
        look.switchTheme();
        changed();
    }

    private void larger() {
        look.larger();
        changed();
    }

    private void smaller() {
        look.smaller();
        changed();
    }

    private void nextSize() {
        look.nextSize();
        changed();
    }

    private void changed() {
        apply.run();
        name();
    }

    private void name() {
        rename(theme, look.dark() ? "Use light _theme" : "Use dark _theme");
        rename(
                size,
                look.largest()
                        ? "Reset te_xt size (" + look.percent() + " %)"
                        : "Enlarge te_xt (" + look.percent() + " %)");
    }

    private static void rename(Button button, String text) {
        button.setText(text);
        button.setAccessibleText(text.replace("_", ""));
    }
}
