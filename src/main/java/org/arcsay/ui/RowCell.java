package org.arcsay.ui;

import javafx.scene.AccessibleRole;
import javafx.scene.control.ContentDisplay;
import javafx.scene.control.Label;
import javafx.scene.control.ListCell;
import javafx.scene.layout.VBox;
import org.arcsay.review.ReviewRow;

/** One reading in the list: title, value and state. JavaFX thread only. */
final class RowCell extends ListCell<ReviewRow> {
    /** Insets of list and cell, and room for the scroll bar. */
    private static final double SIDES = 48;

    private static final double MIN_WIDTH = 120;

    RowCell() {
        setContentDisplay(ContentDisplay.GRAPHIC_ONLY);
        setAccessibleRole(AccessibleRole.LIST_ITEM);
        setPrefWidth(0);
    }

    /** The height that the wrapped words need at the width of the list. */
    @Override
    protected double computePrefHeight(double width) {
        if (!(getGraphic() instanceof VBox card)) {
            return super.computePrefHeight(width);
        }
        double inner = inner();
        return card.prefHeight(inner) + snappedTopInset() + snappedBottomInset();
    }

    private double inner() {
        return Math.max(MIN_WIDTH, getListView().getWidth() - SIDES);
    }

    @Override
    protected void updateItem(ReviewRow row, boolean empty) {
        super.updateItem(row, empty);
        if (empty || row == null) {
            setGraphic(null);
            setAccessibleText("");
            return;
        }
        setAccessibleText(row.spoken() + (row.seen() ? "" : " Not looked at yet."));
        VBox card = card(row);
        card.setPrefWidth(inner());
        setGraphic(card);
    }

    private static VBox card(ReviewRow row) {
        Label state = Marks.labelled(row.state());
        state.setText(row.state().words() + (row.seen() ? "" : " \u00b7 not looked at")
                + (row.drafted() ? " \u00b7 half typed" : ""));
        VBox card = new VBox(Parts.label(row.title()), Parts.label(row.value(), "row-value"), state);
        card.getStyleClass().add("row-card");
        return card;
    }
}
