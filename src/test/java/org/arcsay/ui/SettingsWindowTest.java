package org.arcsay.ui;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Map;
import javafx.scene.input.KeyCode;
import org.arcsay.review.SettingsModel;
import org.arcsay.review.SettingsScript;
import org.junit.jupiter.api.Test;

class SettingsWindowTest extends HeadlessWindow {
    private SettingsScript actions;

    @Override
    protected void show() {
        actions = new SettingsScript();
        SettingsWindow.show(stage, new SettingsModel(actions), Look.standard());
    }

    @Test
    void settingsAreChangedAndSavedByKeyboardAlone() {
        push(KeyCode.DOWN);
        push(KeyCode.TAB);
        push(KeyCode.CONTROL, KeyCode.A);
        write("1.2");
        assertTrue(shows("Changed and not saved yet."));
        push(KeyCode.CONTROL, KeyCode.S);
        assertEquals(List.of(Map.of("unit", "cm", "pace", "1.2")), actions.saved());
        assertTrue(shows("Saved."));
        push(KeyCode.ESCAPE);
        assertFalse(stage.isShowing());
    }

    @Test
    void aWrongValueIsToldWithItsLineAndKept() {
        push(KeyCode.TAB);
        push(KeyCode.CONTROL, KeyCode.A);
        write("9");
        press("Save settings");
        assertTrue(shows("Nothing was saved. settings.properties, line 4: pace cannot be '9'."));
        assertEquals(List.of(), actions.saved());
        push(KeyCode.SHIFT, KeyCode.TAB);
    }

    @Test
    void everyControlHasARoleANameAndRoom() {
        everyControlHasARoleANameAndRoomAtEverySize();
    }

    @Test
    void everyControlIsReachedByKeyboard() {
        everyControlIsReachedByTabAndShowsThatItHasTheFocus();
    }
}
