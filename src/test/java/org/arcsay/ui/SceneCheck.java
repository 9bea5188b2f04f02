package org.arcsay.ui;

import java.util.List;
import java.util.Set;
import java.util.stream.Stream;
import javafx.scene.AccessibleRole;
import javafx.scene.Node;
import javafx.scene.Parent;
import javafx.scene.Scene;
import javafx.scene.control.ButtonBase;
import javafx.scene.control.Control;
import javafx.scene.control.Label;
import javafx.scene.control.RadioButton;
import javafx.scene.control.ScrollBar;
import javafx.scene.paint.Color;

/** Walks a scene graph and lists what a person could not reach, name or read. */
final class SceneCheck {
    private static final double TARGET = 44;

    private SceneCheck() {}

    /** Controls without a role or without a name for a screen reader. */
    static List<String> nameless(Scene scene) {
        return controls(scene)
                .filter(control -> control.getAccessibleRole() == null
                        || control.getAccessibleRole() == AccessibleRole.NODE
                        || control.getAccessibleText() == null
                        || control.getAccessibleText().isBlank())
                .map(SceneCheck::name)
                .toList();
    }

    /** Buttons smaller than 44 by 44 pixels. */
    static List<String> tooSmall(Scene scene) {
        return buttons(scene)
                .filter(button -> button.getWidth() < TARGET || button.getHeight() < TARGET)
                .map(SceneCheck::name)
                .toList();
    }

    /** Buttons that show less than their whole text. */
    static List<String> cutOff(Scene scene) {
        return buttons(scene)
                .filter(button -> button.getWidth() + 0.5 < button.prefWidth(-1))
                .map(SceneCheck::name)
                .toList();
    }

    /** Controls that can be used now and are not among the given ones. */
    static List<String> notAmong(Scene scene, Set<Node> reached) {
        return controls(scene)
                .filter(control -> !control.isDisabled() && !reached.contains(control))
                .filter(control -> !(control instanceof RadioButton radio && isReachedByArrows(radio, reached)))
                .map(SceneCheck::name)
                .toList();
    }

    /** Tab goes to the chosen one of a group, and the arrows from there to the others. */
    private static boolean isReachedByArrows(RadioButton radio, Set<Node> reached) {
        return radio.getToggleGroup() != null
                && radio.getToggleGroup().getSelectedToggle() instanceof Node chosen
                && reached.contains(chosen);
    }

    /** Whether a frame of at least two pixels tells that this control has the focus. */
    static boolean showsFocus(Node node) {
        return node instanceof Control control
                && control.getBorder() != null
                && control.getBorder().getStrokes().stream()
                        .anyMatch(stroke ->
                                stroke.getWidths().getTop() >= 2 && !Color.TRANSPARENT.equals(stroke.getTopStroke()));
    }

    static Stream<Control> buttons(Scene scene) {
        return controls(scene).filter(control -> control instanceof ButtonBase);
    }

    /** Every visible node. */
    static Stream<Node> nodes(Node node) {
        if (!node.isVisible()) {
            return Stream.empty();
        }
        Stream<Node> self = Stream.of(node);
        return node instanceof Parent parent
                ? Stream.concat(self, parent.getChildrenUnmodifiable().stream().flatMap(SceneCheck::nodes))
                : self;
    }

    /** Controls that a person can reach: not labels, and not the inner parts of other controls. */
    private static Stream<Control> controls(Scene scene) {
        return nodes(scene.getRoot())
                .filter(node -> node instanceof Control && !(node instanceof Label) && !(node instanceof ScrollBar))
                .filter(Node::isFocusTraversable)
                .map(Control.class::cast);
    }

    private static String name(Control control) {
        return control.getClass().getSimpleName() + " '" + control.getAccessibleText() + "' " + control.getWidth() + "x"
                + control.getHeight();
    }
}
