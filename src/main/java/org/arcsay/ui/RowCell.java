package org.arcsay.ui;

import javafx.scene.control.Label;
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
        Label state = Marks.labelled(row.state());
        state.setText(row.state().words()
                + (row.seen() ? "" : " \u00b7 not looked at")
                + (row.drafted() ? " \u00b7 half typed" : ""));
        return new VBox(Parts.label(row.title()), Parts.label(row.value(), "row-value"), state);
    }
}
