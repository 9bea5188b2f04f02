package org.arcsay.ui;

import java.io.ByteArrayInputStream;
import java.io.File;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import javafx.scene.Scene;
import javafx.scene.control.Button;
import javafx.scene.control.Label;
import javafx.scene.control.ScrollPane;
import javafx.scene.image.Image;
import javafx.scene.image.ImageView;
import javafx.scene.input.KeyCode;
import javafx.scene.layout.BorderPane;
import javafx.scene.layout.VBox;
import javafx.stage.FileChooser;
import javafx.stage.Stage;
import org.arcsay.review.HomeException;
import org.arcsay.review.VisitReport;

/** The pages of a visit's report, to be looked at and saved. JavaFX thread only. */
final class ReportWindow {
    private static final WindowFrame.Size SIZE = new WindowFrame.Size(1280, 800, 560, 480);

    private final Stage stage;
    private final VisitReport report;
    private final VisitReport.Pages pages;
    private final long visit;
    private final Label status = Parts.label("The report shows the visit as it is now. Esc closes this window.");

    private ReportWindow(Stage stage, VisitReport report, VisitReport.Pages pages, long visit, Look look) {
        this.stage = stage;
        this.report = report;
        this.pages = pages;
        this.visit = visit;
        LookButtons lookButtons = new LookButtons(look);
        Scene scene = WindowFrame.fill(
                stage, "Report of visit " + visit + " \u2013 Arcsay", layout(lookButtons), SIZE, lookButtons, () -> {});
        WindowFrame.onControl(scene, KeyCode.S, this::save);
        WindowFrame.onKey(scene, KeyCode.ESCAPE, stage::close);
    }

    /**
     * Shows the report in this stage.
     *
     * @throws HomeException when it cannot be made; nothing is shown then
     */
    static void show(Stage stage, VisitReport report, long visit, Look look) throws HomeException {
        new ReportWindow(stage, report, report.show(visit), visit, look);
        stage.show();
    }

    private BorderPane layout(LookButtons lookButtons) {
        VBox sheets = new VBox(16);
        sheets.getStyleClass().add("report-pages");
        ScrollPane scroll = WindowFrame.scrolling(sheets, "Pages of the report. " + pages.words());
        for (int page = 0; page < pages.pages().size(); page++) {
            ImageView sheet = new ImageView(
                    new Image(new ByteArrayInputStream(pages.pages().get(page))));
            sheet.setPreserveRatio(true);
            sheet.setSmooth(true);
            sheet.setAccessibleText(
                    "Page " + (page + 1) + " of " + pages.pages().size());
            sheet.fitWidthProperty().bind(scroll.widthProperty().subtract(60));
            sheets.getChildren().add(sheet);
        }
        Button save = Parts.strongButton("_Save report as PDF", "Control S. Asks for the place", this::save);
        Button close = Parts.button("_Close report", "Escape", stage::close);
        BorderPane root = new BorderPane(scroll);
        root.setBottom(WindowFrame.foot(status, WindowFrame.buttons(List.of(save, close), lookButtons.buttons())));
        return root;
    }

    private void save() {
        FileChooser chooser = new FileChooser();
        chooser.setTitle("Save the report");
        chooser.setInitialFileName(pages.fileName());
        Optional<Path> file = Optional.ofNullable(chooser.showSaveDialog(stage)).map(File::toPath);
        file.ifPresent(this::save);
    }

    private void save(Path file) {
        try {
            report.save(visit, file);
            status.setText("Saved as " + file + ". It holds health data; keep it where your record rules allow.");
        } catch (HomeException failed) {
            status.setText(String.valueOf(failed.getMessage()));
        }
    }
}
