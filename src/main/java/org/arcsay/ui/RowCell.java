package org.arcsay.ui;

import javafx.scene.layout.FlowPane;
import javafx.scene.layout.VBox;
import org.arcsay.review.ReviewRow;

/** One reading in the list: title, value and state. JavaFX thread only. */
final class RowCell extends CardCell<ReviewRow> {
    @Override
    protected String spoken(ReviewRow row) {
        return row.spoken() + (row.seen() ? "" : " Not looked at yet.");
    }

    @Override
    protected VBox card(ReviewRow row) {
        FlowPane foot = new FlowPane(Marks.labelled(row.state()));
        foot.getStyleClass().add("row-foot");
        if (!row.seen()) {
            foot.getChildren().add(Parts.label("Not looked at", "quiet"));
        }
        if (row.drafted()) {
            foot.getChildren().add(Parts.label("Half typed", "quiet"));
        }
        return new VBox(Parts.label(row.title()), Parts.label(row.value(), "row-value"), foot);
    }
}
