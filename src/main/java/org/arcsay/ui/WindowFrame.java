package org.arcsay.ui;

import java.util.List;
import javafx.geometry.Rectangle2D;
import javafx.scene.Node;
import javafx.scene.Parent;
import javafx.scene.Scene;
import javafx.scene.control.Label;
import javafx.scene.control.ScrollPane;
import javafx.scene.input.KeyCode;
import javafx.scene.input.KeyCodeCombination;
import javafx.scene.input.KeyCombination;
import javafx.scene.layout.BorderPane;
import javafx.scene.layout.FlowPane;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.VBox;
import javafx.stage.Screen;
import javafx.stage.Stage;

/** The outer form that windows share: size, title and keys; head, scrolling content and foot. JavaFX thread only. */
final class WindowFrame {
    /** Room for the title bar that a desktop puts around a window. */
    private static final double TITLE_BAR = 40;

    private WindowFrame() {}

    /**
     * How large a window is at first, where the screen has room for it, and how small it may be made.
     *
     * @param width of the content
     * @param height of the content
     * @param leastWidth of the window
     * @param leastHeight of the window
     */
    record Size(double width, double height, double leastWidth, double leastHeight) {}

    /**
     * Puts content into a stage, never larger than the screen.
     *
     * @param after runs after every change of the look
     */
    static Scene fill(Stage stage, String title, Parent content, Size size, LookButtons look, Runnable after) {
        Rectangle2D room = Screen.getPrimary().getVisualBounds();
        Scene scene = new Scene(
                content,
                Math.min(size.width(), room.getWidth()),
                Math.min(size.height(), room.getHeight() - TITLE_BAR));
        look.attach(scene, after);
        stage.setScene(scene);
        stage.setTitle(title);
        stage.setMinWidth(size.leastWidth());
        stage.setMinHeight(size.leastHeight());
        return scene;
    }

    static void onKey(Scene scene, KeyCode key, Runnable action) {
        scene.getAccelerators().put(new KeyCodeCombination(key), action);
    }

    static void onControl(Scene scene, KeyCode key, Runnable action) {
        scene.getAccelerators().put(new KeyCodeCombination(key, KeyCombination.SHORTCUT_DOWN), action);
    }

    static VBox head(Label... lines) {
        VBox head = new VBox(lines);
        head.getStyleClass().add("head");
        return head;
    }

    /** Content that scrolls where it has no room. */
    static ScrollPane scrolling(Node content, String name) {
        ScrollPane scroll = new ScrollPane(content);
        scrolling(scroll, name);
        return scroll;
    }

    static void scrolling(ScrollPane pane, String name) {
        pane.setFitToWidth(true);
        pane.getStyleClass().add("detail-scroll");
        pane.setAccessibleText(name);
    }

    static FlowPane buttons(List<? extends Node> own, List<? extends Node> look) {
        FlowPane buttons = new FlowPane();
        buttons.getChildren().addAll(own);
        buttons.getChildren().addAll(look);
        buttons.getStyleClass().add("chips");
        return buttons;
    }

    static VBox foot(Node... lines) {
        VBox foot = new VBox(6, lines);
        foot.getStyleClass().add("foot");
        return foot;
    }

    /** A foot of one line: what is to be told, and buttons at its end. */
    static HBox statusFoot(Label status, List<? extends Node> buttons) {
        HBox foot = new HBox(16, status);
        HBox.setHgrow(status, Priority.ALWAYS);
        status.setMaxWidth(Double.MAX_VALUE);
        foot.getChildren().addAll(buttons);
        foot.getStyleClass().add("foot");
        return foot;
    }

    static BorderPane page(Node head, Node content, Node foot) {
        BorderPane page = new BorderPane(content);
        page.setTop(head);
        page.setBottom(foot);
        return page;
    }
}
