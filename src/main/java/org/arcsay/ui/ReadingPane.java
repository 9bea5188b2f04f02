package org.arcsay.ui;

import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.Locale;
import javafx.scene.Node;
import javafx.scene.control.Button;
import javafx.scene.layout.FlowPane;
import javafx.scene.layout.VBox;
import org.arcsay.model.Finding;
import org.arcsay.model.Severity;
import org.arcsay.model.Value;
import org.arcsay.review.Draft;
import org.arcsay.review.HistoryLine;
import org.arcsay.review.ReviewModel;
import org.arcsay.review.ReviewRow;
import org.arcsay.review.RowState;
import org.arcsay.review.TypedValue;

/** One reading in full: what was heard, what was understood, findings and history. JavaFX thread only. */
final class ReadingPane extends VBox {
    private static final DateTimeFormatter TIME = DateTimeFormatter.ofPattern("HH:mm:ss", Locale.ROOT);

    private final ReviewModel model;
    private final ReviewActions actions;

    ReadingPane(ReviewModel model, ReviewActions actions, ReviewRow row) {
        this.model = model;
        this.actions = actions;
        getStyleClass().add("detail");
        getChildren().add(top(row));
        section("Heard", List.of(Parts.label(row.heard(), "quote")));
        section("Understood", List.of(Parts.label(row.understood())));
        section("Findings", findings(row));
        section("History", row.history().stream().map(ReadingPane::line).toList());
    }

    /** What can be done with this reading. */
    FlowPane buttons(ReviewRow row) {
        FlowPane buttons = new FlowPane();
        buttons.getStyleClass().add("actions");
        if (row.state() == RowState.REJECTED) {
            buttons.getChildren().add(Parts.label("This reading was rejected and no longer counts.", "quiet"));
            return buttons;
        }
        if (row.state() == RowState.HELD) {
            buttons.getChildren()
                    .add(Parts.strongButton(
                            "_Keep reading as said",
                            "Answers the question; then it can be confirmed",
                            actions::askToKeep));
        } else {
            Button confirm = Parts.strongButton(
                    "Con_firm reading", "Control Enter. Makes this reading final", actions::confirmSelected);
            confirm.getStyleClass().add("final");
            confirm.setDisable(model.obstacle(row.number()).isPresent());
            buttons.getChildren().add(confirm);
        }
        Button reject = Parts.button("_Reject reading", "Delete. Asks for the reason", actions::askToReject);
        reject.getStyleClass().add("danger");
        buttons.getChildren()
                .addAll(
                        Parts.button(
                                row.drafted() ? "_Continue correction" : "_Correct reading",
                                "Enter. Opens the form; nothing changes until it is saved",
                                actions::editSelected),
                        reject);
        return buttons;
    }

    private static Node top(ReviewRow row) {
        VBox words = new VBox(
                4, Parts.label(row.title(), "title"), Parts.label(row.value(), "value"), Marks.labelled(row.state()));
        Value value = row.entry().reading().value();
        return ArcDial.draws(value)
                ? new FlowPane(48, 8, words, ArcDial.of(row.entry().reading()))
                : words;
    }

    private void section(String heading, List<? extends Node> content) {
        getChildren().add(new VBox(4, Parts.heading(heading), new VBox(6, content.toArray(Node[]::new))));
    }

    private List<Node> findings(ReviewRow row) {
        if (row.findings().isEmpty()) {
            return List.of(Parts.label("Nothing unusual was found.", "quiet"));
        }
        return row.findings().stream().map(finding -> finding(row, finding)).toList();
    }

    private Node finding(ReviewRow row, Finding finding) {
        VBox box = findingBox(finding);
        boolean open = row.state() != RowState.CONFIRMED && row.state() != RowState.REJECTED;
        finding.alternative().filter(alternative -> open).ifPresent(alternative -> box.getChildren()
                .add(offer(row, alternative)));
        return box;
    }

    /** A finding with its severity as shape and word. */
    static VBox findingBox(Finding finding) {
        VBox box = new VBox(Marks.labelled(finding.severity()), Parts.label(finding.sentence()));
        box.getStyleClass().addAll("finding", "finding-" + Marks.shape(finding.severity()));
        if (finding.severity() == Severity.NOTE) {
            box.getStyleClass().add("finding-note");
        }
        return box;
    }

    private Button offer(ReviewRow row, Value alternative) {
        return Parts.button(
                "Correct reading to " + alternative.words() + " \u2026",
                "Opens the form with this value typed in; nothing changes until it is saved",
                () -> actions.edit(Draft.of(row.entry())
                        .withValue(TypedValue.text(alternative))
                        .withWhy("misheard")));
    }

    private static Node line(HistoryLine line) {
        return Parts.label(TIME.format(line.at()) + "  " + line.sentence());
    }
}
