package org.arcsay.ui;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import javafx.scene.Node;
import javafx.scene.control.Control;
import javafx.scene.input.KeyCode;
import org.junit.jupiter.api.Test;

class ReviewAccessibilityTest extends ReviewWindowTest {
    @Test
    void everyControlHasARoleAndAName() {
        assertEquals(List.of(), SceneCheck.nameless(stage.getScene()));
        push(KeyCode.ENTER);
        assertEquals(List.of(), SceneCheck.nameless(stage.getScene()));
        push(KeyCode.ESCAPE);
        push(KeyCode.DELETE);
        assertEquals(List.of(), SceneCheck.nameless(stage.getScene()));
    }

    @Test
    void everyButtonIsBigEnoughAndWholeAtEveryTextSize() {
        for (int size = 0; size < 5; size++) {
            assertEquals(List.of(), SceneCheck.tooSmall(stage.getScene()));
            assertEquals(List.of(), SceneCheck.cutOff(stage.getScene()));
            push(KeyCode.CONTROL, KeyCode.PLUS);
        }
    }

    @Test
    void everyMarkStandsForItsWord() {
        List<Node> marks = SceneCheck.nodes(stage.getScene().getRoot())
                .filter(node -> node.getStyleClass().contains("mark"))
                .toList();
        assertTrue(marks.size() >= 12);
        for (Node mark : marks) {
            assertFalse(mark.getAccessibleText().isBlank());
        }
    }

    @Test
    void everyButtonSaysWhatItDoesToWhat() {
        SceneCheck.buttons(stage.getScene())
                .map(Control::getAccessibleText)
                .forEach(text -> assertTrue(text.contains(" "), text + " has no object"));
    }

    @Test
    void everyControlIsReachedByKeyboard() {
        everyControlIsReachedByTabAndShowsThatItHasTheFocus();
    }
}
