package org.arcsay.ui;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Stream;
import javafx.scene.control.Button;
import javafx.scene.control.ComboBox;
import javafx.scene.control.Label;
import javafx.scene.control.RadioButton;
import javafx.scene.control.TextField;
import javafx.scene.control.ToggleGroup;
import javafx.scene.layout.FlowPane;
import javafx.scene.layout.HBox;
import javafx.scene.layout.VBox;
import org.arcsay.model.Measure;
import org.arcsay.model.Mode;
import org.arcsay.model.Placement;
import org.arcsay.model.Remark;
import org.arcsay.model.Remark.Feel;
import org.arcsay.model.Remark.PainPlace;
import org.arcsay.model.Side;
import org.arcsay.review.Draft;
import org.arcsay.review.DraftReading;
import org.arcsay.review.DraftReading.Field;
import org.arcsay.review.ReviewModel;

/** Every field of a reading, to correct it or to add a missed one; what is typed is kept at once. JavaFX thread only. */
final class EditForm extends VBox {
    private final ReviewModel model;
    private final ReviewActions actions;
    private final ToggleGroup sides = new ToggleGroup();
    private final ToggleGroup modes = new ToggleGroup();
    private final ComboBox<Measure> measure = Parts.choice("What was measured", Measure::words);
    private final TextField value = Parts.textField("Value", "");
    private final ComboBox<Placement> placement = Parts.choice("Placement of the instrument", EditForm::words);
    private final ComboBox<Optional<PainPlace>> pain =
            Parts.choice("Pain to add", place -> place.map(PainPlace::words).orElse("nothing to add"));
    private final TextField painScore = Parts.textField("Pain score, 0 to 10", "0 to 10");
    private final ComboBox<Optional<Feel>> feel =
            Parts.choice("Quality to add", quality -> quality.map(Feel::words).orElse("nothing to add"));
    private final TextField note = Parts.textField("Note to add", "");
    private final TextField why = Parts.textField("Reason for the correction", "");
    private final Label sideProblem = Parts.label("", "problem");
    private final Label measureProblem = Parts.label("", "problem");
    private final Label modeProblem = Parts.label("", "problem");
    private final Label valueProblem = Parts.label("", "problem");
    private final Label painProblem = Parts.label("", "problem");
    private final Label noteProblem = Parts.label("", "problem");
    private final Label echo = Parts.label("", "echo");
    private final VBox findings = new VBox(6);
    private final FlowPane remarks = new FlowPane();
    private final ValueChips chips = new ValueChips(value);
    private Draft draft;
    private boolean asked;

    EditForm(ReviewModel model, ReviewActions actions, Draft draft, String title) {
        this.model = model;
        this.actions = actions;
        this.draft = draft;
        getStyleClass().add("detail");
        value.getStyleClass().add("value-field");
        note.getStyleClass().add("wide");
        why.getStyleClass().add("wide");
        remarks.getStyleClass().add("chips");
        fill();
        getChildren().addAll(Parts.label(title, "title"), what(), valueBox(), findings, beside());
        listen();
        refresh();
    }

    Draft draft() {
        return draft;
    }

    /** Puts the cursor where most corrections begin. */
    void start() {
        if (draft.isNew()) {
            ((RadioButton) sides.getToggles().get(0)).requestFocus();
        } else {
            value.requestFocus();
            value.selectAll();
        }
    }

    FlowPane buttons() {
        boolean added = draft.isNew();
        FlowPane buttons = new FlowPane(
                Parts.strongButton(
                        added ? "_Save missed reading" : "_Save correction",
                        "Control S. The reading still has to be confirmed",
                        this::save),
                Parts.button(
                        added ? "Ca_ncel missed reading" : "Ca_ncel correction",
                        "Escape. Forgets what was typed here",
                        actions::cancel));
        buttons.getStyleClass().add("actions");
        return buttons;
    }

    void save() {
        asked = true;
        refresh();
        actions.finish(model.save(draft));
    }

    private FlowPane what() {
        FlowPane fields = new FlowPane(
                Parts.field("Side", toggles(sides, Arrays.asList(Side.values()), Side::word), sideProblem),
                Parts.field("Measured", measure, measureProblem),
                Parts.field("Mode", toggles(modes, Arrays.asList(Mode.values()), Mode::word), modeProblem),
                Parts.field("Placement", placement, Parts.label("")));
        fields.getStyleClass().add("fields");
        return fields;
    }

    private VBox valueBox() {
        VBox box = Parts.field("Value", value, valueProblem);
        box.getChildren().add(2, chips);
        box.getChildren().add(echo);
        return box;
    }

    private VBox beside() {
        FlowPane fields = new FlowPane(
                Parts.field("Add pain", pain, painProblem),
                Parts.field("Pain score", painScore, Parts.label("")),
                Parts.field("Add quality", feel, Parts.label("")),
                Parts.field("Add note", note, noteProblem),
                Parts.field(draft.isNew() ? "Why was it missed?" : "Why is it corrected?", why, Parts.label("")));
        fields.getStyleClass().add("fields");
        return new VBox(8, remarks, fields);
    }

    private static <T> HBox toggles(ToggleGroup group, List<T> items, Function<T, String> words) {
        HBox row = new HBox();
        for (T item : items) {
            RadioButton radio = Parts.radio(words.apply(item), words.apply(item), group);
            radio.setUserData(item);
            row.getChildren().add(radio);
        }
        return row;
    }

    private void fill() {
        measure.getItems().setAll(model.measures());
        placement.getItems().setAll(Placement.values());
        pain.getItems().setAll(withNone(PainPlace.values()));
        feel.getItems().setAll(withNone(Feel.values()));
    }

    private static <T> List<Optional<T>> withNone(T[] items) {
        return Stream.concat(
                        Stream.of(Optional.<T>empty()), Arrays.stream(items).map(Optional::of))
                .toList();
    }

    private void listen() {
        show();
        sides.selectedToggleProperty().addListener((seen, before, now) -> {
            if (now != null) {
                change(draft.withSide((Side) now.getUserData()));
            }
        });
        modes.selectedToggleProperty().addListener((seen, before, now) -> {
            if (now != null) {
                change(draft.withMode((Mode) now.getUserData()));
            }
        });
        measure.valueProperty().addListener((seen, before, now) -> change(draft.withMeasure(now)));
        value.textProperty().addListener((seen, before, now) -> change(draft.withValue(now)));
        placement.valueProperty().addListener((seen, before, now) -> change(draft.withPlacement(now)));
        pain.valueProperty().addListener((seen, before, now) -> change(draft.withPain(now, draft.painScore())));
        painScore.textProperty().addListener((seen, before, now) -> change(draft.withPain(draft.pain(), now)));
        feel.valueProperty().addListener((seen, before, now) -> change(draft.withFeel(now)));
        note.textProperty().addListener((seen, before, now) -> change(draft.withNote(now)));
        why.textProperty().addListener((seen, before, now) -> change(draft.withWhy(now)));
    }

    private void show() {
        draft.side().ifPresent(side -> select(sides, side));
        draft.mode().ifPresent(mode -> select(modes, mode));
        draft.measure().ifPresent(measure::setValue);
        value.setText(draft.value());
        placement.setValue(draft.placement());
        pain.setValue(draft.pain());
        painScore.setText(draft.painScore());
        feel.setValue(draft.feel());
        note.setText(draft.note());
        why.setText(draft.why());
    }

    private static void select(ToggleGroup group, Object item) {
        group.getToggles().stream()
                .filter(toggle -> toggle.getUserData() == item)
                .forEach(group::selectToggle);
    }

    private void change(Draft next) {
        draft = next;
        model.keepDraft(next);
        refresh();
    }

    private void refresh() {
        DraftReading read = model.read(draft);
        boolean untouched = draft.isNew() && !asked;
        Parts.say(sideProblem, untouched ? "" : read.problem(Field.SIDE));
        Parts.say(measureProblem, untouched ? "" : read.problem(Field.MEASURE));
        Parts.say(modeProblem, untouched ? "" : read.problem(Field.MODE));
        Parts.say(valueProblem, draft.value().isEmpty() && untouched ? "" : read.problem(Field.VALUE));
        Parts.say(painProblem, read.problem(Field.PAIN));
        Parts.say(noteProblem, read.problem(Field.NOTE));
        Parts.say(
                echo,
                read.reading()
                        .map(reading -> "Will be saved as: " + reading.words())
                        .orElse(""));
        findings.getChildren()
                .setAll(read.findings().stream().map(ReadingPane::findingBox).toList());
        Parts.show(findings, !read.findings().isEmpty());
        chips.offer(draft.measure());
        remarks.getChildren().setAll(draft.remarks().stream().map(this::removal).toList());
        Parts.show(remarks, !draft.remarks().isEmpty());
    }

    private Button removal(Remark remark) {
        return Parts.button(
                "Remove \u201c" + remark.words() + "\u201d",
                "Takes this remark away when the correction is saved",
                () -> change(draft.withoutRemark(remark)));
    }

    private static String words(Placement placement) {
        return placement == Placement.UNSTATED ? "not stated" : placement.word();
    }
}
