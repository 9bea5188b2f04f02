package org.arcsay.ui;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import javafx.scene.input.KeyCode;
import org.arcsay.model.PatientProtocol;
import org.arcsay.review.HomeModel;
import org.arcsay.review.HomeScript;
import org.arcsay.review.ProtocolModel;
import org.junit.jupiter.api.Test;

class ProtocolWindowTest extends HeadlessWindow {
    private ProtocolModel model;

    @Override
    protected void show() {
        model = new HomeModel(new HomeScript()).protocol("T-7").orElseThrow();
        ProtocolWindow.show(stage, model, Look.standard());
    }

    @Test
    void aProtocolIsSetByKeyboardAlone() {
        push(KeyCode.DOWN);
        push(KeyCode.TAB);
        push(KeyCode.DOWN);
        push(KeyCode.TAB);
        push(KeyCode.TAB);
        write("IP flexion at most 40");
        push(KeyCode.CONTROL, KeyCode.S);
        assertEquals(PatientProtocol.parse("involved left; no passive; IP flexion at most 40"), model.protocol());
        assertTrue(
                shows("Kept. It holds for visits of T-7 that begin from now on: involved hand: left; passive motion not"
                        + " permitted; IP flexion at most 40 degrees."));
        push(KeyCode.ESCAPE);
        assertFalse(stage.isShowing());
    }

    @Test
    void whatIsNotUnderstoodIsToldAndNothingIsKept() {
        push(KeyCode.TAB);
        push(KeyCode.TAB);
        push(KeyCode.TAB);
        write("IP bending 40");
        press("Save protocol");
        assertTrue(model.message().startsWith("Nothing was changed: 'ip bending 40' is not understood."));
        assertTrue(shows(model.message()));
        assertTrue(model.protocol().isNone());
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
