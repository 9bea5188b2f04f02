package org.arcsay.ui;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;

import javafx.scene.control.TextArea;
import javafx.scene.input.KeyCode;
import org.junit.jupiter.api.Test;

class ProblemWindowTest extends HeadlessWindow {
    private static final String MESSAGE =
            "/home/clinic/settings.properties, line 2: unit cannot be 'feet'; use one of cm, in, mm";

    @Override
    protected void show() {
        ProblemWindow.show(stage, MESSAGE, Look.standard());
    }

    @Test
    void theWholeMessageIsShownAndCanBeCopied() {
        TextArea words = lookup(".text-area").query();
        assertEquals(MESSAGE, words.getText());
        assertFalse(words.isEditable());
    }

    @Test
    void enterAndEscapeClose() {
        push(KeyCode.ENTER);
        assertFalse(stage.isShowing());
        interact(this::show);
        push(KeyCode.ESCAPE);
        assertFalse(stage.isShowing());
    }

    @Test
    void everyControlHasARoleANameAndRoom() {
        everyControlHasARoleANameAndRoomAtEverySize();
    }
}
