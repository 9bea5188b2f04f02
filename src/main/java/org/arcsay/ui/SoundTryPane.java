package org.arcsay.ui;

import java.util.Optional;
import java.util.concurrent.atomic.AtomicReference;
import java.util.function.Function;
import javafx.application.Platform;
import javafx.scene.control.Button;
import javafx.scene.control.Label;
import javafx.scene.layout.FlowPane;
import javafx.scene.layout.VBox;
import org.arcsay.review.MeasuringState.Loudness;
import org.arcsay.review.SoundTry;

/** Tries the microphone before measuring: speak, and see the level. JavaFX thread only. */
final class SoundTryPane extends VBox {
    private static final String START = "Try _microphone";
    private static final String STOP = "Stop trying _microphone";

    private final Function<SoundTry.Listener, SoundTry> maker;
    private final Button button = Parts.button(START, "Shows how loud it hears you; nothing is kept", this::toggle);
    private final LevelBar level = new LevelBar();
    private final Label notice = Parts.label("", "notice");
    private Optional<SoundTry> running = Optional.empty();

    /**
     * @param maker starts a try of the microphone that is chosen
     */
    SoundTryPane(Function<SoundTry.Listener, SoundTry> maker) {
        super(6);
        this.maker = maker;
        FlowPane row = new FlowPane(button, level);
        row.getStyleClass().add("chips");
        getChildren().addAll(row, notice);
        Parts.show(level, false);
        Parts.say(notice, "");
    }

    private void toggle() {
        if (running.isPresent()) {
            stop();
        } else {
            Screen screen = new Screen();
            running = Optional.of(maker.apply(screen));
            show(true);
        }
    }

    /** Lets the microphone go; harmless when none is tried. */
    void stop() {
        running.ifPresent(SoundTry::close);
        running = Optional.empty();
        Parts.say(notice, "");
        level.show(Loudness.SILENT);
        show(false);
    }

    private void show(boolean trying) {
        button.setText(trying ? STOP : START);
        button.setAccessibleText(button.getText().replace("_", ""));
        Parts.show(level, trying);
    }

    private record Heard(Loudness level, String notice) {}

    /** Brings what is heard to the screen; called by the thread of the try. */
    private final class Screen implements SoundTry.Listener {
        private final AtomicReference<Heard> latest = new AtomicReference<>();

        @Override
        public void heard(Loudness loudness, String sentence) {
            if (latest.getAndSet(new Heard(loudness, sentence)) == null) {
                Platform.runLater(() -> tell(latest.getAndSet(null)));
            }
        }

        private void tell(Heard heard) {
            if (running.isPresent()) {
                level.show(heard.level());
                Parts.say(notice, heard.notice());
            }
        }
    }
}
