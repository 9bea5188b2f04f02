package org.arcsay.ui;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;

import javafx.scene.control.ListView;
import javafx.scene.control.TextInputControl;
import javafx.scene.input.KeyCode;
import org.arcsay.model.JournalEvent.Confirmed;
import org.arcsay.model.JournalEvent.Rejected;
import org.arcsay.model.JournalEvent.Taken;
import org.arcsay.review.DemoVisit;
import org.junit.jupiter.api.Test;

class ReviewKeyboardTest extends ReviewWindowTest {
    @Test
    void theFirstDoubtfulRowIsChosenAndSeen() {
        assertInstanceOf(ListView.class, focused());
        assertTrue(model.row(DemoVisit.DOUBTFUL_ENTRY).orElseThrow().seen());
        assertTrue(shows("15 and 50 sound alike"));
    }

    @Test
    void controlEnterConfirmsTheRowAndGoesOn() {
        push(KeyCode.CONTROL, KeyCode.ENTER);
        assertInstanceOf(Confirmed.class, journal.events().get(0));
        assertTrue(model.row(DemoVisit.HELD_ENTRY).orElseThrow().seen());
        push(KeyCode.CONTROL, KeyCode.ENTER);
        assertEquals(1, journal.events().size(), "a held row is not confirmed");
        assertTrue(shows("This reading is held."));
    }

    @Test
    void enterOpensTheCorrectionAndAcceptsNothing() {
        push(KeyCode.ENTER);
        assertInstanceOf(TextInputControl.class, focused());
        push(KeyCode.ENTER);
        push(KeyCode.ENTER);
        assertEquals(0, journal.events().size());
        write("50");
        assertTrue(shows("Will be saved as: right IP flexion, active: 50 degrees"));
        push(KeyCode.CONTROL, KeyCode.S);
        Taken taken = assertInstanceOf(Taken.class, journal.events().get(0));
        assertEquals("right IP flexion, active: 50 degrees", taken.reading().words());
        assertInstanceOf(ListView.class, focused());
    }

    @Test
    void escapeForgetsTheCorrection() {
        push(KeyCode.ENTER);
        write("99");
        assertTrue(model.hasDraft(DemoVisit.DOUBTFUL_ENTRY));
        push(KeyCode.ESCAPE);
        assertEquals(0, journal.events().size());
        assertTrue(!model.hasDraft(DemoVisit.DOUBTFUL_ENTRY));
        assertInstanceOf(ListView.class, focused());
    }

    @Test
    void movingOnKeepsWhatWasHalfTyped() {
        push(KeyCode.ENTER);
        write("5");
        interact(() -> stage.getScene().lookup(".row-list").requestFocus());
        push(KeyCode.DOWN);
        push(KeyCode.UP);
        assertTrue(shows("Continue correction"));
        push(KeyCode.ENTER);
        assertEquals("5", ((TextInputControl) focused()).getText());
    }

    @Test
    void deleteAsksForAReasonFirst() {
        push(KeyCode.DELETE);
        assertInstanceOf(TextInputControl.class, focused());
        assertEquals(0, journal.events().size());
        write("coughing");
        press("Reject reading");
        assertEquals(
                "coughing",
                assertInstanceOf(Rejected.class, journal.events().get(0)).why());
        push(KeyCode.CONTROL, KeyCode.Z);
        assertEquals(2, journal.events().size());
        assertEquals(6, model.rows().size());
    }

    @Test
    void insertOpensAnEmptyFormWhoseProblemsAreNamed() {
        push(KeyCode.INSERT);
        push(KeyCode.CONTROL, KeyCode.S);
        assertTrue(shows("Choose the side: left or right."));
        assertEquals(0, journal.events().size());
    }
}
