package org.arcsay.ui;

import java.util.function.Consumer;
import java.util.logging.Level;
import java.util.logging.Logger;
import javafx.application.Application;
import javafx.stage.Stage;

/** Starts the toolkit for one window; one call in the life of the program, from any thread but the JavaFX thread. */
final class WindowHost {
    /** Held, so that the level set on it stays. */
    private static final Logger TOOLKIT = Logger.getLogger("javafx");

    private static volatile Consumer<Stage> first = stage -> {};

    private WindowHost() {}

    /** The application that JavaFX itself makes. Used by the JavaFX thread only. */
    public static final class Host extends Application {
        @Override
        public void start(Stage stage) {
            first.accept(stage);
        }
    }

    /** Shows a window and returns when the last window was closed. */
    static void run(Consumer<Stage> window) throws NoScreenException {
        TOOLKIT.setLevel(Level.SEVERE);
        first = window;
        try {
            Application.launch(Host.class);
        } catch (UnsupportedOperationException noDisplay) {
            throw new NoScreenException(
                    "No window can be opened because there is no screen here (" + noDisplay.getMessage()
                            + "). Run the command on a desktop, or use the commands that print text.",
                    noDisplay);
        }
    }
}
