package org.arcsay.ui;

import java.io.File;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.Function;
import javafx.beans.binding.Bindings;
import javafx.collections.FXCollections;
import javafx.scene.Node;
import javafx.scene.Scene;
import javafx.scene.control.ComboBox;
import javafx.scene.control.Label;
import javafx.scene.control.ListView;
import javafx.scene.control.RadioButton;
import javafx.scene.control.ScrollPane;
import javafx.scene.control.ToggleGroup;
import javafx.scene.input.KeyCode;
import javafx.scene.layout.BorderPane;
import javafx.scene.layout.FlowPane;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.Region;
import javafx.scene.layout.VBox;
import javafx.stage.FileChooser;
import javafx.stage.Stage;
import org.arcsay.model.PatientCode;
import org.arcsay.model.Side;
import org.arcsay.report.Format;
import org.arcsay.report.compare.CompareModel;
import org.arcsay.report.compare.VisitLine;
import org.arcsay.report.content.Brief;
import org.arcsay.report.content.JointRange;
import org.arcsay.report.content.RangeTrend;
import org.arcsay.report.content.Report;

/** Visits of a patient on the left, one of them compared on the right, and its export below. JavaFX thread only. */
public final class CompareWindow {
    private static final WindowFrame.Size SIZE = new WindowFrame.Size(1280, 860, 820, 560);

    private final CompareModel model;
    private final Function<String, Optional<Path>> target;
    private final ComboBox<PatientCode> patients = Parts.choice("Patient code", PatientCode::text);
    private final ListView<VisitLine> visits = new ListView<>();
    private final VBox above = new VBox();
    private final VBox table = new VBox();
    private final VBox below = new VBox();
    private final ComboBox<Format> format =
            Parts.choice("Export format", known -> known.name().toLowerCase(Locale.ROOT));
    private final Label status = Parts.label("");

    private CompareWindow(Stage stage, CompareModel model, Look look, Function<String, Optional<Path>> target) {
        this.model = model;
        this.target = target;
        LookButtons lookButtons = new LookButtons(look);
        Scene scene = WindowFrame.fill(
                stage, "Compare visits \u2013 Arcsay", layout(lookButtons), SIZE, lookButtons, visits::refresh);
        WindowFrame.onControl(scene, KeyCode.E, this::export);
    }

    /** Shows the comparison in this stage. */
    public static CompareWindow show(Stage stage, CompareModel model, Look look) {
        return show(stage, model, look, name -> ask(stage, name));
    }

    /**
     * Shows the comparison in this stage.
     *
     * @param target chooses the file for a proposed name, or nothing when the user changed their mind
     */
    static CompareWindow show(Stage stage, CompareModel model, Look look, Function<String, Optional<Path>> target) {
        CompareWindow window = new CompareWindow(stage, model, look, target);
        stage.show();
        window.start();
        return window;
    }

    private static Optional<Path> ask(Stage stage, String name) {
        FileChooser chooser = new FileChooser();
        chooser.setTitle("Export the report");
        chooser.setInitialFileName(name);
        return Optional.ofNullable(chooser.showSaveDialog(stage)).map(File::toPath);
    }

    private void start() {
        patients.setItems(FXCollections.observableArrayList(model.patients()));
        model.patient().or(() -> patients.getItems().stream().findFirst()).ifPresent(patients::setValue);
        tell(model.message().isEmpty() ? "Ctrl+E exports the report of the chosen visit." : model.message());
        visits.requestFocus();
    }

    private BorderPane layout(LookButtons lookButtons) {
        patients.valueProperty().addListener((seen, before, now) -> choosePatient(now));
        visits.getStyleClass().add("row-list");
        visits.setCellFactory(list -> new VisitCell());
        visits.widthProperty().addListener((seen, before, now) -> visits.refresh());
        visits.setAccessibleText("Visits of this patient, newest first");
        visits.setAccessibleHelp("Arrows choose the visit that is compared");
        visits.setPlaceholder(Parts.label("No visit to show."));
        visits.getSelectionModel().selectedItemProperty().addListener((seen, before, now) -> chooseVisit(now));
        VBox left = new VBox(Parts.field("Patient code", patients, Parts.label("")), visits);
        left.getStyleClass().add("compare-left");
        VBox.setVgrow(visits, Priority.ALWAYS);
        VBox content = new VBox(above, table, below);
        content.getStyleClass().add("detail");
        ScrollPane scroll = new ScrollPane(content);
        for (VBox words : List.of(above, below)) {
            words.getStyleClass().add("compare-words");
            words.maxWidthProperty()
                    .bind(Bindings.createDoubleBinding(() -> room(scroll, content), scroll.viewportBoundsProperty()));
        }
        WindowFrame.scrolling(scroll, "Comparison of the chosen visit");
        BorderPane root = new BorderPane(scroll);
        root.setLeft(left);
        root.setBottom(new VBox(exportRow(), WindowFrame.statusFoot(status, lookButtons.buttons())));
        return root;
    }

    /** Only the table may be wider than the window, at large text; sentences and pictures are broken to its width. */
    private static double room(ScrollPane scroll, Region content) {
        return scroll.getViewportBounds().getWidth()
                - content.getInsets().getLeft()
                - content.getInsets().getRight();
    }

    private Node exportRow() {
        format.getItems().setAll(Format.values());
        format.setValue(Format.PDF);
        format.setMaxWidth(Region.USE_PREF_SIZE);
        FlowPane row = new FlowPane(
                Parts.label("Report of this visit as"),
                format,
                Parts.strongButton("_Export report", "Control E. Asks where to put the file", this::export));
        row.getStyleClass().add("actions");
        return row;
    }

    private void choosePatient(PatientCode patient) {
        if (patient != null) {
            model.choosePatient(patient);
            visits.getItems().setAll(model.visits());
            visits.getSelectionModel().selectFirst();
            tell(model.message());
        }
        refresh();
    }

    private void chooseVisit(VisitLine visit) {
        if (visit != null) {
            model.chooseVisit(visit.id());
            refresh();
        }
    }

    private void refresh() {
        List.of(above, table, below).forEach(part -> part.getChildren().clear());
        model.report().ifPresent(report -> {
            head(report);
            table.getChildren().add(new CompareGrid(model.lines(), model.side()));
            below.getChildren()
                    .add(Parts.label(
                            "Square and bold: beyond measurement error. Plain: within it, which is no proof of no change.",
                            "quiet"));
            model.totals().forEach(total -> below.getChildren().add(Parts.label(Brief.degrees(total))));
            model.sections()
                    .forEach(section -> sentences(
                            section.title(),
                            section.about(model.side()).stream()
                                    .map(Brief::degrees)
                                    .toList()));
            ranges();
            trends();
            sentences(
                    "Every measure over the visits",
                    model.courses().stream().map(Brief::degrees).toList());
            sentences("How to read this", report.legend());
            sentences("Compared with", report.basis());
            sentences("Cautions", report.cautions());
        });
    }

    private void head(Report report) {
        ToggleGroup group = new ToggleGroup();
        HBox sides = new HBox(8);
        for (Side side : List.of(Side.RIGHT, Side.LEFT)) {
            RadioButton radio = Parts.radio(side.word(), side.word() + " hand", group);
            radio.setSelected(side == model.side());
            radio.setDisable(!report.sides().contains(side));
            radio.setOnAction(event -> {
                model.chooseSide(side);
                refresh();
            });
            sides.getChildren().add(radio);
        }
        above.getChildren()
                .addAll(
                        Parts.label(
                                report.current().visit().patient() + ", "
                                        + model.side().word() + " hand",
                                "title"),
                        Parts.label("This visit is " + report.standing().code() + "."),
                        sides);
    }

    private void ranges() {
        if (model.ranges().isEmpty()) {
            return;
        }
        below.getChildren().add(Parts.heading("Range now"));
        FlowPane row = new FlowPane(18, 10);
        for (JointRange range : model.ranges()) {
            Label words = Parts.label(Brief.degrees(range.words()), "quiet", "picture-text");
            row.getChildren().add(new VBox(4, Parts.label(range.title(), "field-name"), new RangeDial(range), words));
        }
        below.getChildren()
                .addAll(
                        row,
                        Parts.label(
                                "Wide band: this hand. Narrow band: other hand. Dashed arc: mean of the norm set. Dashed line: "
                                        + "neutral; bent is below, beyond neutral above.",
                                "quiet"));
    }

    private void trends() {
        if (model.trends().isEmpty()) {
            return;
        }
        below.getChildren().add(Parts.heading("Over the visits"));
        FlowPane row = new FlowPane(18, 10);
        for (RangeTrend trend : model.trends()) {
            String reference = trend.referenceWords().isEmpty() ? "" : ". Dashed: " + trend.referenceWords();
            Label words = Parts.label(Brief.degrees(trend.words() + reference), "quiet", "picture-text-wide");
            row.getChildren().add(new VBox(4, Parts.label(trend.title(), "field-name"), new TrendBars(trend), words));
        }
        below.getChildren().add(row);
    }

    private void sentences(String title, List<String> sentences) {
        if (!sentences.isEmpty()) {
            below.getChildren().add(Parts.heading(title));
            sentences.forEach(sentence -> below.getChildren().add(Parts.label(sentence, "quiet")));
        }
    }

    private void export() {
        String name = model.fileName(format.getValue());
        if (name.isEmpty()) {
            tell("Choose a visit first.");
            return;
        }
        target.apply(name).ifPresent(file -> {
            model.export(format.getValue(), file);
            tell(model.message());
        });
    }

    private void tell(String message) {
        status.setText(message);
    }

    /** A visit in the list. JavaFX thread only. */
    private static final class VisitCell extends CardCell<VisitLine> {
        @Override
        protected VBox card(VisitLine visit) {
            return new VBox(Parts.label(visit.words()));
        }

        @Override
        protected String spoken(VisitLine visit) {
            return "Visit of " + visit.words().replace("\n", ", ");
        }
    }
}
