package org.arcsay.ui;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import javafx.scene.Node;
import javafx.scene.Scene;
import javafx.scene.control.Button;
import javafx.scene.control.ComboBox;
import javafx.scene.control.Label;
import javafx.scene.control.TextField;
import javafx.scene.input.KeyCode;
import javafx.scene.layout.BorderPane;
import javafx.scene.layout.FlowPane;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.Region;
import javafx.scene.layout.VBox;
import javafx.stage.Stage;
import javafx.stage.WindowEvent;
import org.arcsay.analysis.SeriesPlan;
import org.arcsay.model.Side;
import org.arcsay.model.Visit;
import org.arcsay.review.HomeModel;
import org.arcsay.review.MeasuringModel;
import org.arcsay.review.ProtocolModel;
import org.arcsay.review.ReviewModel;
import org.arcsay.review.RowState;

/** The first screen: begin a visit, or look through a recent one. JavaFX thread only. */
public final class HomeWindow {
    private static final WindowFrame.Size SIZE = new WindowFrame.Size(1280, 800, 560, 480);

    private static final String NO_MICROPHONE =
            "No microphone was found. Plug one in and start Arcsay again. Without one a visit can be typed, and the demo visit"
                    + " can be played.";

    private final HomeModel model;
    private final Look look;
    private final Stage stage;
    private final TextField code = Parts.textField("Patient code", "such as TH-014; no name");
    private final Label problem = Parts.label("", "problem");
    private final Button asNew = Parts.button("", "Begins a visit for a patient who has none yet", this::measureNew);
    private final ComboBox<Optional<Side>> side =
            Parts.choice("Hand to begin with", chosen -> chosen.map(hand -> capital(hand.word()))
                    .orElse("Say it aloud"));
    private final ComboBox<SeriesPlan> plan = Parts.choice("Series", SeriesPlan::title);
    private final ComboBox<Optional<String>> microphone =
            Parts.choice("Microphone", chosen -> chosen.orElse("The system\u2019s choice"));
    private final SoundTryPane sound;
    private final VBox visits = new VBox(10);

    private HomeWindow(Stage stage, HomeModel model, Look look) {
        this.stage = stage;
        this.model = model;
        this.look = look;
        sound = new SoundTryPane(listener -> model.tryMicrophone(microphone.getValue(), listener));
        LookButtons lookButtons = new LookButtons(look);
        Scene scene = WindowFrame.fill(stage, "Arcsay", layout(lookButtons), SIZE, lookButtons, () -> {});
        WindowFrame.onControl(scene, KeyCode.COMMA, this::settings);
    }

    /** Shows the first screen in this stage. */
    public static HomeWindow show(Stage stage, HomeModel model, Look look) {
        HomeWindow window = new HomeWindow(stage, model, look);
        window.offer();
        window.refresh();
        stage.show();
        window.code.requestFocus();
        return window;
    }

    private BorderPane layout(LookButtons lookButtons) {
        Button settings = Parts.button("S_ettings", "Control comma", this::settings);
        VBox content = new VBox(begin(), Parts.heading("Recent visits"), visits);
        content.getStyleClass().add("home");
        VBox head = WindowFrame.head(
                Parts.label("Arcsay", "patient"),
                Parts.label("Measure the hand, say the reading, look through it, confirm it.", "quiet"),
                Parts.label(ReviewHead.CAUTION, "caution-line"));
        return WindowFrame.page(
                head,
                WindowFrame.scrolling(content, "Begin a visit, and recent visits"),
                WindowFrame.foot(WindowFrame.buttons(List.of(settings), lookButtons.buttons())));
    }

    private VBox begin() {
        code.setOnAction(event -> measure());
        Button start = Parts.strongButton("_Start measuring", "Enter. Begins a visit and listens", this::measure);
        FlowPane fields = new FlowPane(
                field("Patient code", code),
                field("Hand to begin with", side),
                field("Series", plan),
                field("Microphone", microphone));
        Button demo = Parts.button(
                "Play the _demo visit",
                "A recording is heard in place of a microphone; nothing of it is kept",
                () -> open(model.demo()));
        Button protocol = Parts.button(
                "Treatment pr_otocol\u2026",
                "Shows and sets what this patient's protocol permits: passive and resisted motion, range limits",
                this::protocol);
        FlowPane buttons = new FlowPane(start, asNew, protocol, demo);
        for (FlowPane row : List.of(fields, buttons)) {
            row.getStyleClass().addAll("chips", "begin-row");
        }
        Parts.show(asNew, false);
        microphone.setOnAction(event -> sound.stop());
        Label noMicrophone = Parts.label("", "notice");
        Parts.say(noMicrophone, model.microphones().isEmpty() ? NO_MICROPHONE : "");
        Parts.show(sound, !model.microphones().isEmpty());
        return new VBox(8, Parts.heading("New visit"), fields, noMicrophone, sound, problem, buttons);
    }

    private static VBox field(String name, Node control) {
        return Parts.field(name, control, Parts.label(""));
    }

    private static String capital(String word) {
        return word.substring(0, 1).toUpperCase(Locale.ROOT) + word.substring(1);
    }

    /** Fills what can be chosen. */
    private void offer() {
        side.getItems().setAll(Optional.empty(), Optional.of(Side.LEFT), Optional.of(Side.RIGHT));
        plan.getItems().setAll(model.plans());
        microphone.getItems().setAll(Optional.empty());
        model.microphones().forEach(name -> microphone.getItems().add(Optional.of(name)));
        for (ComboBox<?> box : List.of(side, plan, microphone)) {
            box.getSelectionModel().selectFirst();
        }
        plan.setValue(model.usualPlan());
        microphone.setValue(model.usualMicrophone());
    }

    private HomeModel.Choice choice() {
        return new HomeModel.Choice(code.getText(), side.getValue(), plan.getValue(), microphone.getValue());
    }

    private void measure() {
        open(model.measure(choice()));
    }

    private void measureNew() {
        open(model.measureNew(choice()));
    }

    private void open(Optional<MeasuringModel> measuring) {
        sound.stop();
        tell();
        measuring.ifPresent(begun -> {
            code.clear();
            Stage next = new Stage();
            next.setOnShown(event -> stage.hide());
            MeasuringWindow.show(next, begun, look);
            back(next);
        });
    }

    private void protocol() {
        Optional<ProtocolModel> protocol = model.protocol(code.getText());
        tell();
        protocol.ifPresent(opened -> ProtocolWindow.show(new Stage(), opened, look));
    }

    private void settings() {
        Stage next = new Stage();
        SettingsWindow.show(next, model.settings(), look);
        next.addEventHandler(WindowEvent.WINDOW_HIDDEN, event -> offer());
    }

    private void review(long visit) {
        Optional<ReviewModel> review = model.review(visit);
        tell();
        review.ifPresent(opened -> {
            Stage next = new Stage();
            next.setOnShown(event -> stage.hide());
            ReviewWindow.show(next, opened, look);
            back(next);
        });
    }

    /** This screen comes back, renewed, when the other one closes. */
    private void back(Stage next) {
        next.addEventHandler(WindowEvent.WINDOW_HIDDEN, event -> {
            model.refresh();
            refresh();
            look.apply(stage.getScene());
            stage.show();
        });
    }

    private void tell() {
        Parts.say(problem, model.message());
        Parts.show(asNew, model.newPatient().isPresent());
        model.newPatient().ifPresent(patient -> {
            asNew.setText("Begin with ne_w patient " + patient);
            asNew.setAccessibleText("Begin with new patient " + patient);
        });
    }

    private void refresh() {
        tell();
        visits.getChildren().clear();
        if (model.recent().isEmpty()) {
            visits.getChildren()
                    .add(Parts.label(
                            "There is no visit yet. Type a patient code above and start measuring. To see the whole job"
                                    + " first, with no microphone and no patient, play the demo visit: a recorded voice"
                                    + " measures two thumbs, and the review and the report follow."));
        }
        model.recent().stream().map(this::card).forEach(visits.getChildren()::add);
    }

    private Node card(Visit visit) {
        Label state = Parts.label(HomeModel.progress(visit), "state");
        state.setGraphic(Marks.of(visit.isFinal() ? RowState.CONFIRMED : RowState.OPEN));
        VBox words = new VBox(
                2,
                Parts.label(visit.patient().text(), "row-value"),
                Parts.label("Visit " + visit.id() + ", " + ReviewHead.DAY.format(visit.startedAt()), "quiet"),
                state);
        HBox.setHgrow(words, Priority.ALWAYS);
        Button open = Parts.button(
                "Review visit " + visit.id(),
                "Opens the readings of " + visit.patient() + " to be looked at and confirmed",
                () -> review(visit.id()));
        open.setMinWidth(Region.USE_PREF_SIZE);
        HBox card = new HBox(16, words, open);
        card.getStyleClass().add("visit-card");
        return card;
    }
}
