package org.arcsay.ui;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import javafx.scene.AccessibleRole;
import javafx.scene.Node;
import javafx.scene.Parent;
import javafx.scene.control.ButtonBase;
import javafx.scene.control.Control;
import javafx.scene.control.Label;
import javafx.scene.control.ScrollBar;
import javafx.scene.input.KeyCode;
import org.junit.jupiter.api.Test;

class ReviewAccessibilityTest extends HeadlessWindow {
    @Test
    void everyControlHasARoleAndAName() {
        assertEquals(List.of(), nameless());
        push(KeyCode.ENTER);
        assertEquals(List.of(), nameless());
        push(KeyCode.ESCAPE);
        push(KeyCode.DELETE);
        assertEquals(List.of(), nameless());
    }

    @Test
    void everyTargetIsBigEnoughAtEveryTextSize() {
        for (int size = 0; size < 5; size++) {
            List<String> small = controls()
                    .filter(control -> control instanceof ButtonBase)
                    .filter(control -> control.getHeight() < 44 || control.getWidth() < 44)
                    .map(control -> control.getAccessibleText() + " " + control.getWidth() + "x" + control.getHeight())
                    .toList();
            assertEquals(List.of(), small);
            push(KeyCode.CONTROL, KeyCode.PLUS);
        }
    }

    @Test
    void noButtonIsCutOffAtDoubleTextSize() {
        for (int step = 0; step < 4; step++) {
            push(KeyCode.CONTROL, KeyCode.PLUS);
        }
        List<String> cut = controls()
                .filter(control -> control instanceof ButtonBase)
                .filter(control -> control.getWidth() + 0.5 < control.prefWidth(-1))
                .map(Control::getAccessibleText)
                .toList();
        assertEquals(List.of(), cut);
    }

    @Test
    void everyMarkStandsBesideItsWord() {
        List<Node> marks = nodes(stage.getScene().getRoot())
                .filter(node -> node.getStyleClass().contains("mark"))
                .toList();
        assertTrue(marks.size() >= 12);
        for (Node mark : marks) {
            assertTrue(mark.getAccessibleText() != null && !mark.getAccessibleText().isBlank());
        }
    }

    @Test
    void everyButtonSaysWhatItDoesToWhat() {
        controls()
                .filter(control -> control instanceof ButtonBase)
                .map(Control::getAccessibleText)
                .forEach(text -> assertTrue(text.contains(" "), text + " has no object"));
    }

    private List<String> nameless() {
        List<String> missing = new ArrayList<>();
        controls().forEach(control -> {
            AccessibleRole role = control.getAccessibleRole();
            String name = control.getAccessibleText();
            if (role == null || role == AccessibleRole.NODE || name == null || name.isBlank()) {
                missing.add(control.getClass().getSimpleName() + " " + control.getStyleClass() + " " + role);
            }
        });
        return missing;
    }

    /** Controls that a person can reach: not labels, and not the inner parts of other controls. */
    private Stream<Control> controls() {
        return nodes(stage.getScene().getRoot())
                .filter(node -> node instanceof Control && !(node instanceof Label) && !(node instanceof ScrollBar))
                .filter(Node::isFocusTraversable)
                .map(Control.class::cast);
    }

    private static Stream<Node> nodes(Node node) {
        if (!node.isVisible()) {
            return Stream.empty();
        }
        Stream<Node> self = Stream.of(node);
        return node instanceof Parent parent
                ? Stream.concat(self, parent.getChildrenUnmodifiable().stream().flatMap(ReviewAccessibilityTest::nodes))
                : self;
    }
}
