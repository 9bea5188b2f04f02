package org.arcsay.ui;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import javafx.scene.Node;
import javafx.scene.Scene;
import javafx.scene.control.Button;
import javafx.scene.control.Label;
import javafx.scene.control.ListView;
import javafx.scene.control.ScrollPane;
import javafx.scene.control.SplitPane;
import javafx.scene.input.KeyCode;
import javafx.scene.input.KeyEvent;
import javafx.scene.layout.BorderPane;
import javafx.scene.layout.VBox;
import javafx.stage.Stage;
import javafx.stage.WindowEvent;
import org.arcsay.review.Draft;
import org.arcsay.review.HomeException;
import org.arcsay.review.Outcome;
import org.arcsay.review.ReviewModel;
import org.arcsay.review.ReviewRow;
import org.jspecify.annotations.Nullable;

/** The review of one visit: readings on the left, one of them in full on the right. JavaFX thread only. */
public final class ReviewWindow implements ReviewActions {
    private static final WindowFrame.Size SIZE = new WindowFrame.Size(1280, 800, 720, 560);

    private static final List<String> KEYS = List.of(
            "Up and down arrow choose a reading",
            "Enter opens the correction of the chosen reading",
            "Ctrl+Enter confirms the chosen reading",
            "Delete rejects it and asks why",
            "Insert or Ctrl+N adds a missed reading",
            "Ctrl+S saves an open correction",
            "Esc cancels an open correction",
            "Ctrl+Z takes back the last change",
            "Ctrl+R shows the report",
            "F3 shows what can be said",
            "Ctrl+D changes between light and dark",
            "Ctrl and plus or minus change the text size",
            "Alt and an underlined letter press that button");

    private final ReviewModel model;
    private final Look look;
    private final Stage stage;
    private final ListView<ReviewRow> list = new ListView<>();
    private final BorderPane right = new BorderPane();
    private final ScrollPane scroll = new ScrollPane();
    private final Label status = Parts.label("");
    private final ReviewHead head;
    private final UnsavedBanner banner;
    private Optional<EditForm> form = Optional.empty();
    private boolean asking;
    private boolean refreshing;

    private ReviewWindow(Stage stage, ReviewModel model, Look look) {
        this.stage = stage;
        this.model = model;
        this.look = look;
        LookButtons lookButtons = new LookButtons(look);
        head = new ReviewHead(model, this);
        banner = new UnsavedBanner(model, this::retry, model::discardUnsaved);
        String title = "Review of visit " + model.visit().id() + ", "
                + model.visit().patient().text() + " \u2013 Arcsay";
        accelerators(WindowFrame.fill(stage, title, layout(lookButtons), SIZE, lookButtons, list::refresh));
        stage.setOnCloseRequest(this::beforeClosing);
        model.onChange(this::refresh);
    }

    /** Shows the review in this stage with the standard look. */
    public static ReviewWindow show(Stage stage, ReviewModel model) {
        return show(stage, model, Look.standard());
    }

    /** Shows the review in this stage. */
    public static ReviewWindow show(Stage stage, ReviewModel model, Look look) {
        ReviewWindow window = new ReviewWindow(stage, model, look);
        stage.show();
        window.refresh();
        window.list.requestFocus();
        window.list.getSelectionModel().selectFirst();
        window.selected().ifPresent(window::chosen);
        return window;
    }

    @Override
    public void confirmSelected() {
        if (form.isPresent()) {
            tell("Save or cancel the correction first; then confirm the reading.");
            return;
        }
        selected().ifPresent(row -> {
            Outcome outcome = model.confirm(row.number());
            if (outcome instanceof Outcome.Done) {
                model.nextUnconfirmed(row.number()).ifPresent(this::select);
            }
            tell(outcome.message());
        });
    }

    @Override
    public void confirmAll() {
        tell(model.confirmAll().message());
    }

    @Override
    public void editSelected() {
        selected().filter(row -> row.entry().counts()).ifPresent(row -> edit(model.draftOf(row.number())));
    }

    @Override
    public void edit(Draft draft) {
        String title = draft.isNew()
                ? "Missed reading"
                : "Correct " + model.row(draft.entry()).map(ReviewRow::title).orElse("reading");
        EditForm opened = new EditForm(model, this, draft, title);
        form = Optional.of(opened);
        asking = false;
        VBox content = new VBox(opened);
        if (!draft.isNew()) {
            model.row(draft.entry()).ifPresent(row -> content.getChildren().add(0, heardBox(row)));
        }
        showRight(content, opened.buttons());
        opened.start();
    }

    @Override
    public void addMissed() {
        edit(model.draftOf(Draft.NEW));
    }

    @Override
    public void askToReject() {
        selected()
                .filter(row -> row.entry().counts())
                .ifPresent(row -> ask(ReasonPane.reject(
                        row.title() + ": " + row.value(),
                        why -> finish(model.reject(row.number(), why)),
                        this::cancel)));
    }

    @Override
    public void askToKeep() {
        selected()
                .ifPresent(row -> ask(ReasonPane.keep(
                        row.title() + ": " + row.value(),
                        why -> finish(model.keepAsSaid(row.number(), why)),
                        this::cancel)));
    }

    @Override
    public void cancel() {
        Optional<EditForm> open = form;
        closeForms();
        open.ifPresent(cancelled -> model.dropDraft(cancelled.draft().entry()));
        list.requestFocus();
    }

    @Override
    public void undo() {
        tell(model.undo().message());
    }

    @Override
    public void finish(Outcome outcome) {
        if (outcome instanceof Outcome.Done) {
            Optional<Integer> added = form.filter(open -> open.draft().isNew())
                    .map(open -> model.visit().entries().size());
            closeForms();
            added.ifPresent(this::select);
            list.requestFocus();
        }
        tell(outcome.message());
    }

    private void showReport() {
        try {
            if (model.report().isPresent()) {
                ReportWindow.show(
                        new Stage(), model.report().get(), model.visit().id(), look);
            }
        } catch (HomeException failed) {
            tell(String.valueOf(failed.getMessage()));
        }
    }

    private void retry() {
        Outcome outcome = model.retry();
        form.filter(open -> outcome instanceof Outcome.Done
                        && !model.hasDraft(open.draft().entry()))
                .ifPresent(stored -> closeForms());
        tell(outcome.message());
    }

    private BorderPane layout(LookButtons lookButtons) {
        list.getStyleClass().add("row-list");
        list.setCellFactory(view -> new RowCell());
        list.setAccessibleText("Readings of this visit, doubtful ones first");
        list.setAccessibleHelp("Arrows choose, Enter corrects, Delete rejects, Insert adds a missed reading");
        list.setPlaceholder(Parts.label(
                "No reading was captured in this visit. Add missed readings with Ctrl+N, or close the window."));
        list.getSelectionModel().selectedItemProperty().addListener((seen, before, now) -> chosen(now));
        list.addEventHandler(KeyEvent.KEY_PRESSED, this::listKey);
        list.setMinWidth(240);
        list.widthProperty().addListener((seen, before, now) -> list.refresh());
        WindowFrame.scrolling(scroll, "Details of the chosen reading");
        right.setCenter(scroll);
        SplitPane split = new SplitPane(list, right);
        split.setDividerPositions(0.33);
        split.setAccessibleText("Readings and details");
        Button report =
                Parts.button("Show _report", "Control R. The pages as they would be printed now", this::showReport);
        Parts.show(report, model.report().isPresent());
        List<Button> buttons = new ArrayList<>(List.of(report));
        buttons.addAll(lookButtons.buttons());
        tell("F1 lists the keys.");
        BorderPane root = new BorderPane(split);
        root.setTop(new VBox(head, banner));
        root.setBottom(WindowFrame.statusFoot(status, buttons));
        return root;
    }

    private void accelerators(Scene scene) {
        WindowFrame.onControl(scene, KeyCode.ENTER, this::confirmSelected);
        WindowFrame.onControl(scene, KeyCode.N, this::addMissed);
        WindowFrame.onControl(scene, KeyCode.Z, this::undo);
        WindowFrame.onControl(scene, KeyCode.S, () -> form.ifPresent(EditForm::save));
        WindowFrame.onControl(scene, KeyCode.R, this::showReport);
        WindowFrame.onKey(scene, KeyCode.F1, this::showKeys);
        WindowFrame.onKey(scene, KeyCode.ESCAPE, () -> {
            if (form.isPresent() || asking) {
                cancel();
            }
        });
    }

    private void listKey(KeyEvent event) {
        if (event.isShortcutDown() || event.isAltDown()) {
            return;
        }
        Runnable action =
                switch (event.getCode()) {
                    case ENTER -> this::editSelected;
                    case DELETE -> this::askToReject;
                    case INSERT -> this::addMissed;
                    default -> null;
                };
        if (action != null) {
            event.consume();
            action.run();
        }
    }

    private void ask(ReasonPane pane) {
        form = Optional.empty();
        asking = true;
        showRight(pane, null);
        pane.start();
    }

    private void showKeys() {
        VBox keys = new VBox(Parts.label("Keys", "title"));
        keys.getStyleClass().add("detail");
        KEYS.forEach(key -> keys.getChildren().add(Parts.label(key)));
        form = Optional.empty();
        asking = true;
        showRight(keys, null);
        tell("Esc goes back to the reading. A half-typed correction is kept.");
    }

    private void closeForms() {
        form = Optional.empty();
        asking = false;
        selected().ifPresent(this::showReading);
    }

    private void chosen(ReviewRow row) {
        if (row == null || refreshing) {
            return;
        }
        form = Optional.empty();
        asking = false;
        showReading(row);
        model.markSeen(row.number());
    }

    private void showReading(ReviewRow row) {
        ReadingPane pane = new ReadingPane(model, this, row);
        showRight(pane, pane.buttons(row));
    }

    private void showRight(Node content, @Nullable Node buttons) {
        boolean focusInside = focusIsInside(right);
        scroll.setContent(content);
        scroll.setVvalue(0);
        right.setBottom(buttons);
        if (focusInside) {
            list.requestFocus();
        }
    }

    private boolean focusIsInside(Node pane) {
        Node node = stage.getScene().getFocusOwner();
        while (node != null && node != pane) {
            node = node.getParent();
        }
        return node != null;
    }

    private static Node heardBox(ReviewRow row) {
        VBox box = new VBox(4, Parts.heading("Heard"), Parts.label(row.heard(), "quote"));
        box.getStyleClass().addAll("detail", "above-form");
        return box;
    }

    private void refresh() {
        int kept = selected().map(ReviewRow::number).orElse(0);
        List<ReviewRow> rows = new ArrayList<>(model.rows());
        rows.addAll(model.rejected());
        refreshing = true;
        list.getItems().setAll(rows);
        int now = model.row(kept).map(ReviewRow::number).orElse(kept);
        choose(now);
        refreshing = false;
        head.refresh();
        banner.refresh();
        if (form.isEmpty() && !asking) {
            selected().ifPresent(this::showReading);
        }
        if (!model.draftProblem().isEmpty()) {
            tell(model.draftProblem());
        }
    }

    private void select(int number) {
        choose(number);
        list.scrollTo(list.getSelectionModel().getSelectedIndex());
    }

    private void choose(int number) {
        for (int i = 0; i < list.getItems().size(); i++) {
            if (list.getItems().get(i).number() == number) {
                list.getSelectionModel().clearAndSelect(i);
                list.getFocusModel().focus(i);
                return;
            }
        }
    }

    private Optional<ReviewRow> selected() {
        return Optional.ofNullable(list.getSelectionModel().getSelectedItem());
    }

    private void tell(String message) {
        status.setText(message);
    }

    private void beforeClosing(WindowEvent event) {
        model.unsaved().ifPresent(unsaved -> {
            event.consume();
            tell("The window stays open because the last change is not saved. Save it again or discard it above.");
            stage.requestFocus();
        });
    }
}
