package org.arcsay.ui;

import javafx.scene.AccessibleRole;
import javafx.scene.control.ContentDisplay;
import javafx.scene.control.ListCell;
import javafx.scene.layout.VBox;

/** A list cell with a card of words as high as they need at the width of the list. JavaFX thread only. */
abstract class CardCell<T> extends ListCell<T> {
    /** Room at both sides of a card: insets of the cell and of the list, and its scroll bar. */
    private static final double SIDES = 48;

    private static final double MIN_WIDTH = 120;

    CardCell() {
        setContentDisplay(ContentDisplay.GRAPHIC_ONLY);
        setAccessibleRole(AccessibleRole.LIST_ITEM);
        setPrefWidth(0);
    }

    /** What is shown of an item. */
    protected abstract VBox card(T item);

    /** What is read aloud of an item. */
    protected abstract String spoken(T item);

    /** The height that the wrapped words need at the width of the list. */
    @Override
    protected double computePrefHeight(double width) {
        if (!(getGraphic() instanceof VBox card)) {
            return super.computePrefHeight(width);
        }
        return card.prefHeight(inner()) + snappedTopInset() + snappedBottomInset();
    }

    private double inner() {
        return Math.max(MIN_WIDTH, getListView().getWidth() - SIDES);
    }

    @Override
    protected void updateItem(T item, boolean empty) {
        super.updateItem(item, empty);
        if (empty || item == null) {
            setGraphic(null);
            setAccessibleText("");
            return;
        }
        setAccessibleText(spoken(item));
        VBox card = card(item);
        card.getStyleClass().add("row-card");
        card.setPrefWidth(inner());
        setGraphic(card);
    }
}
