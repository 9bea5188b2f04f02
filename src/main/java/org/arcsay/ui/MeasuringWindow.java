package org.arcsay.ui;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicBoolean;
import javafx.application.Platform;
import javafx.scene.Node;
import javafx.scene.Scene;
import javafx.scene.control.Button;
import javafx.scene.control.Label;
import javafx.scene.control.MenuButton;
import javafx.scene.control.MenuItem;
import javafx.scene.control.ScrollPane;
import javafx.scene.control.SplitPane;
import javafx.scene.control.TextField;
import javafx.scene.input.KeyCode;
import javafx.scene.layout.BorderPane;
import javafx.scene.layout.FlowPane;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.Region;
import javafx.scene.layout.VBox;
import javafx.stage.Stage;
import org.arcsay.model.Entry;
import org.arcsay.model.Slot;
import org.arcsay.review.Control;
import org.arcsay.review.HomeException;
import org.arcsay.review.Listening;
import org.arcsay.review.MeasuringModel;
import org.arcsay.review.MeasuringState;
import org.arcsay.review.OutcomeWords;
import org.arcsay.review.ReviewModel;
import org.arcsay.session.Context;
import org.arcsay.session.Outcome;
import org.arcsay.session.Question;

/** The screen beside the patient, to be read from two metres while both hands are busy. JavaFX thread only. */
public final class MeasuringWindow {
    private static final WindowFrame.Size SIZE = new WindowFrame.Size(1280, 800, 720, 560);

    private final MeasuringModel model;
    private final AtomicBoolean stale = new AtomicBoolean();
    private final Label listening = Parts.label("", "listening");
    private final LevelBar level = new LevelBar();
    private final Label context = Parts.label("", "context");
    private final Label notice = Parts.label("", "notice");
    private final Label remark = Parts.label("", "remark");
    private final Label expected = Parts.label("", "expected");
    private final Label nextHeading = Parts.heading("Measure now");
    private final Label lastHeading = Parts.heading("Understood last");
    private final Label lastTitle = Parts.label("", "last-title");
    private final Label lastValue = Parts.label("", "last-value");
    private final Label answer = Parts.label("", "answer");
    private final Label heard = Parts.label("", "quiet", "heard");
    private final Label question = Parts.label("", "question");
    private final FlowPane answers = new FlowPane();
    private final VBox questionBox = new VBox(question, answers);
    private final SeriesPicture series = new SeriesPicture();
    private final ScrollPane seriesScroll = new ScrollPane();
    private final VBox now = new VBox();
    private final VBox foot = new VBox(6);
    private final VBox column = new VBox();
    private final ScrollPane readingScroll = new ScrollPane(column);
    private final BorderPane root = new BorderPane();
    private final SplitPane split = new SplitPane();
    private final FlowPane controls = new FlowPane();
    private final MenuButton change = menu("Set _hand and mode", "What is said from now on belongs to it");
    private final MenuButton ask = menu("_Ask for status", "Answered by sound and on this screen");
    private final MenuButton skip = menu("S_kip measure", "Leaves the expected measure out, with its reason");
    private final TextField typed = Parts.textField("Words to say by typing", "Type instead (F2): ip flexion 75");
    private final List<Node> lasting = new ArrayList<>();
    private List<Control> offered = List.of();
    private List<Control> answered = List.of();
    private final Stage stage;
    private final Look look;
    private Optional<MeasuringState> shown = Optional.empty();
    private boolean left;

    private MeasuringWindow(Stage stage, MeasuringModel model, Look look) {
        this.stage = stage;
        this.model = model;
        this.look = look;
        LookButtons lookButtons = new LookButtons(look);
        String title = "Measuring " + model.state().patient().text() + " \u2013 Arcsay";
        Scene scene =
                WindowFrame.fill(stage, title, layout(lookButtons), SIZE, lookButtons, () -> rearrange(look.large()));
        WindowFrame.onKey(scene, KeyCode.F2, typed::requestFocus);
        stage.setOnHidden(event -> model.closed());
        model.onChange(state -> refreshSoon());
    }

    /** Shows the screen in this stage. */
    public static MeasuringWindow show(Stage stage, MeasuringModel model, Look look) {
        MeasuringWindow window = new MeasuringWindow(stage, model, look);
        window.refresh();
        stage.show();
        window.typed.requestFocus();
        return window;
    }

    /** Many changes between two pictures make one refresh. */
    private void refreshSoon() {
        if (stale.compareAndSet(false, true)) {
            Platform.runLater(() -> {
                stale.set(false);
                refresh();
            });
        }
    }

    private BorderPane layout(LookButtons lookButtons) {
        HBox.setHgrow(context, Priority.ALWAYS);
        FlowPane strip = new FlowPane(listening, level, context);
        strip.getStyleClass().add("strip");
        order(false);
        Parts.say(remark, model.remark());
        WindowFrame.scrolling(readingScroll, "Expected and last reading");
        WindowFrame.scrolling(seriesScroll, "Series");
        now.getStyleClass().add("now");
        questionBox.getStyleClass().add("question-box");
        answers.getStyleClass().add("chips");
        split.setAccessibleText("Reading and series");
        fillFoot(lookButtons);
        root.setCenter(split);
        root.setTop(strip);
        return root;
    }

    /**
     * From top to bottom.
     *
     * @param lastFirst the last reading before the next one: at large text, while it is asked about, there is not room for both
     */
    private void order(boolean lastFirst) {
        List<Node> last = List.of(lastHeading, lastTitle, lastValue, answer, heard);
        List<Node> next = List.of(nextHeading, expected);
        List<Node> all = new ArrayList<>(List.of(remark, notice, questionBox));
        all.addAll(lastFirst ? last : next);
        all.addAll(lastFirst ? next : last);
        if (!now.getChildren().equals(all)) {
            now.getChildren().setAll(all);
        }
    }

    private void rearrange(boolean large) {
        Node focused = root.getScene().getFocusOwner();
        arrange(large);
        if (focused != null) {
            focused.requestFocus();
        }
    }

    /** Side by side; at large text one below the other, so that nothing is squeezed. */
    private void arrange(boolean large) {
        order(large && model.state().question().isPresent());
        root.setBottom(null);
        seriesScroll.setContent(null);
        if (large) {
            column.getChildren().setAll(now, foot, series);
            split.getItems().setAll(readingScroll);
        } else {
            column.getChildren().setAll(now);
            seriesScroll.setContent(series);
            root.setBottom(foot);
            split.getItems().setAll(readingScroll, seriesScroll);
            split.setDividerPositions(0.62);
        }
    }

    private void fillFoot(LookButtons lookButtons) {
        typed.setOnAction(event -> sayTyped());
        Button say = Parts.button("Say typed words", "Enter. Does what saying them would do", this::sayTyped);
        HBox typing = new HBox(8, typed, say);
        typing.getStyleClass().add("typing");
        controls.getStyleClass().add("chips");
        lasting.add(typing);
        lasting.addAll(lookButtons.buttons());
        controls.getChildren().setAll(lasting);
        foot.getChildren().setAll(controls, Parts.label(ReviewHead.CAUTION, "caution-line"));
        foot.getStyleClass().add("foot");
    }

    private void sayTyped() {
        model.say(typed.getText());
        typed.clear();
    }

    private void refresh() {
        MeasuringState state = model.state();
        if (left) {
            return;
        }
        listening(state.listening());
        level.show(state.level());
        if (shown.filter(state::sameBesideSound).isPresent()) {
            return;
        }
        shown = Optional.of(state);
        context.setText(words(state.context()));
        Parts.say(notice, state.notice());
        expected.setText(expected(state));
        lastTitle.setText(state.last().map(MeasuringWindow::title).orElse("Nothing yet"));
        lastValue.setText(
                state.last().map(entry -> entry.reading().value().words()).orElse("\u2014"));
        answer(state);
        Parts.say(heard, state.heard().isEmpty() ? "" : "Heard: \u201c" + state.heard() + "\u201d");
        ask(state);
        series.show(state.series(), state.expected());
        series.next().ifPresent(this::bringIntoView);
        offer(Control.offered(state));
        if (state.listening() == Listening.ENDED) {
            goOnToReview();
        }
    }

    /** The session has ended: the same window now shows the review. */
    private void goOnToReview() {
        try {
            ReviewModel review = model.review();
            left = true;
            stage.setOnHidden(null);
            model.closed();
            ReviewWindow.show(stage, review, look);
        } catch (HomeException failed) {
            Parts.say(notice, String.valueOf(failed.getMessage()));
        }
    }

    private void listening(Listening state) {
        listening.setText(state.words());
        String shape = shape(state);
        listening.setGraphic(Parts.mark(shape));
        listening.getStyleClass().removeIf(style -> style.startsWith("state-"));
        listening.getStyleClass().add("state-" + shape);
    }

    private static String shape(Listening state) {
        return switch (state) {
            case LISTENING, HEARING -> "live";
            case PAUSED, STARTING, ANSWERING, TYPING -> "pause";
            case NO_SIGNAL, DEVICE_LOST -> "held";
            case ENDED -> "rejected";
        };
    }

    private static String words(Context context) {
        return context.side()
                        .map(side -> side.word().toUpperCase(Locale.ROOT) + " hand")
                        .orElse("No hand named yet") + ", " + context.mode().word();
    }

    private static String expected(MeasuringState state) {
        String none = state.context().side().isEmpty()
                ? "Say \u201cright hand\u201d or \u201cleft hand\u201d"
                : "The series is complete";
        return state.expected().map(MeasuringWindow::words).orElse(none);
    }

    private static String words(Slot slot) {
        String words = slot.words();
        return Character.toUpperCase(words.charAt(0)) + words.substring(1);
    }

    private static String title(Entry entry) {
        return words(entry.reading().slot());
    }

    private void answer(MeasuringState state) {
        Parts.say(
                answer,
                state.outcome()
                        .map(MeasuringWindow::words)
                        .map(MeasuringWindow::sentence)
                        .orElse(""));
        String shape = state.outcome().map(MeasuringWindow::shape).orElse("open");
        answer.setGraphic(Parts.mark(shape));
        answer.getStyleClass().removeIf(style -> style.startsWith("state-"));
        answer.getStyleClass().add("state-" + shape);
    }

    /** The question stands in a box of its own. */
    private static String words(Outcome outcome) {
        if (outcome instanceof Outcome.Asked asked) {
            return asked.stored().isEmpty() ? "" : "saved, and to be looked at";
        }
        return OutcomeWords.of(outcome);
    }

    private static String sentence(String text) {
        if (text.isEmpty()) {
            return text;
        }
        String end = text.endsWith(".") || text.endsWith("?") ? "" : ".";
        return Character.toUpperCase(text.charAt(0)) + text.substring(1) + end;
    }

    private static String shape(Outcome outcome) {
        if (outcome instanceof Outcome.Refused) {
            return "unsaved";
        }
        if (outcome instanceof Outcome.Asked) {
            return "doubt";
        }
        if (outcome instanceof Outcome.Undone) {
            return "rejected";
        }
        boolean stored = outcome instanceof Outcome.Saved
                || outcome instanceof Outcome.Corrected
                || outcome instanceof Outcome.Kept
                || outcome instanceof Outcome.Remarked;
        return stored ? "sure" : "open";
    }

    private void ask(MeasuringState state) {
        Parts.show(questionBox, state.question().isPresent());
        order(look.large() && state.question().isPresent());
        question.setText(state.question().map(Question::sentence).orElse(""));
        List<Control> possible = state.question().map(Control::answers).orElse(List.of());
        if (!possible.equals(answered)) {
            answered = possible;
            answers.getChildren().setAll(possible.stream().map(this::button).toList());
        }
    }

    private void offer(List<Control> possible) {
        if (possible.equals(offered)) {
            return;
        }
        offered = possible;
        List<Node> shown = new ArrayList<>();
        in(Control.Group.LISTEN).stream().map(this::button).forEach(shown::add);
        for (MenuButton menu : List.of(change, ask, skip)) {
            menu.getItems().setAll(in(group(menu)).stream().map(this::item).toList());
            if (!menu.getItems().isEmpty()) {
                shown.add(menu);
            }
        }
        shown.addAll(lasting);
        Node focused = stage.getScene().getFocusOwner();
        controls.getChildren().setAll(shown);
        if (focused != null && focused.getScene() != null) {
            focused.requestFocus();
        }
    }

    private Control.Group group(MenuButton menu) {
        if (menu == change) {
            return Control.Group.CHANGE;
        }
        return menu == ask ? Control.Group.ASK : Control.Group.SKIP;
    }

    private List<Control> in(Control.Group group) {
        return offered.stream().filter(control -> control.group() == group).toList();
    }

    private Button button(Control control) {
        String help = "The same as saying \u201c" + control.words() + "\u201d";
        return control.group() == Control.Group.ANSWER
                ? Parts.strongButton(control.label(), help, () -> model.say(control.words()))
                : Parts.button(control.label(), help, () -> model.say(control.words()));
    }

    private MenuItem item(Control control) {
        MenuItem item = new MenuItem(control.label());
        item.setOnAction(event -> model.say(control.words()));
        return item;
    }

    private static MenuButton menu(String text, String help) {
        MenuButton menu = new MenuButton(text);
        menu.setAccessibleText(text.replace("_", ""));
        menu.setAccessibleHelp(help);
        menu.setMinWidth(Region.USE_PREF_SIZE);
        return menu;
    }

    private void bringIntoView(Node node) {
        if (seriesScroll.getContent() == null) {
            return;
        }
        Platform.runLater(() -> {
            double seen = seriesScroll.getViewportBounds().getHeight();
            double hidden = series.getHeight() - seen;
            double middle =
                    node.getBoundsInParent().getCenterY() + node.getParent().getLayoutY();
            double wanted = hidden <= 0 ? 0 : (middle - seen / 2) / hidden;
            seriesScroll.setVvalue(Math.max(0, Math.min(1, wanted)));
        });
    }
}
