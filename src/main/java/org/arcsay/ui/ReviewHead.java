package org.arcsay.ui;

import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.Locale;
import javafx.scene.control.Button;
import javafx.scene.control.Label;
import javafx.scene.layout.FlowPane;
import javafx.scene.layout.VBox;
import org.arcsay.model.Visit;
import org.arcsay.review.ReviewModel;
import org.arcsay.review.ReviewRow;

/** Who, when, how far, and what concerns the whole visit. JavaFX thread only. */
final class ReviewHead extends VBox {
    static final String CAUTION = "Arcsay records what you say and confirm. No diagnosis, no advice: local protocols, "
            + "record rules and licensed practice come first. Not a certified medical device.";
    static final DateTimeFormatter DAY = DateTimeFormatter.ofPattern("EEEE d MMMM uuuu, HH:mm", Locale.ENGLISH);

    private final ReviewModel model;
    private final Label count = Parts.label("", "count");
    private final Label remaining = Parts.label("", "quiet");
    private final FlowPane marks = new FlowPane();
    private final Button confirmAll;
    private final Button undo;

    ReviewHead(ReviewModel model, ReviewActions actions) {
        this.model = model;
        getStyleClass().add("head");
        marks.getStyleClass().add("progress-marks");
        marks.setPrefWrapLength(260);
        confirmAll = Parts.button(
                "Confirm a_ll plausible readings",
                "Possible once every reading was looked at; doubtful ones are confirmed one by one",
                actions::confirmAll);
        undo = Parts.button("_Undo last change", "Control Z", actions::undo);
        Button add = Parts.button("_Add missed reading", "Control N or Insert", actions::addMissed);
        FlowPane row = new FlowPane(who(model.visit()), new VBox(2, count, marks, remaining), add, undo, confirmAll);
        row.getStyleClass().add("head-row");
        getChildren().addAll(row, Parts.label(CAUTION, "caution-line"));
        refresh();
    }

    void refresh() {
        List<ReviewRow> rows = model.rows();
        int confirmed = model.confirmedCount();
        count.setText(
                model.visit().isFinal()
                        ? "All " + rows.size() + " readings confirmed"
                        : confirmed + " of " + rows.size() + " readings confirmed");
        marks.getChildren()
                .setAll(rows.stream().map(row -> Marks.of(row.state())).toList());
        String obstacle = model.obstacleToConfirmAll().orElse("");
        confirmAll.setDisable(!obstacle.isEmpty());
        remaining.setText(model.visit().isFinal() ? "This visit is final." : obstacle);
        undo.setDisable(model.undoWords().isEmpty());
        undo.setAccessibleHelp(
                model.undoWords().map(words -> "Takes back " + words + ". ").orElse("Nothing to take back. ")
                        + "Control Z");
    }

    private static VBox who(Visit visit) {
        return new VBox(
                Parts.label(visit.patient().text(), "patient"),
                Parts.label("Visit " + visit.id() + ", " + DAY.format(visit.startedAt()), "quiet"));
    }
}
