package org.arcsay.ui;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;

import javafx.stage.WindowEvent;
import org.arcsay.model.JournalEvent.Released;
import org.arcsay.model.JournalEvent.Taken;
import org.arcsay.review.ListJournal;
import org.junit.jupiter.api.Test;

class ReviewMouseTest extends ReviewWindowTest {
    @Test
    void anOfferedAlternativeIsTypedInAndNotApplied() {
        press("Correct reading to 50 degrees \u2026");
        assertEquals(0, journal.events().size());
        press("Save correction");
        assertEquals(
                "misheard",
                assertInstanceOf(Taken.class, journal.events().get(0)).why());
        press("Undo last change");
        assertEquals(2, journal.events().size());
        assertTrue(shows("15 degrees"));
    }

    @Test
    void aHeldReadingIsAnsweredThenConfirmed() {
        clickOn("lacks 30 degrees");
        press("Keep reading as said");
        press("Use \u201cmeasured twice\u201d");
        press("Keep reading as said");
        assertEquals(
                "measured twice",
                assertInstanceOf(Released.class, journal.events().get(0)).why());
        press("Confirm reading");
        assertEquals(2, journal.events().size());
    }

    @Test
    void confirmingAllIsOfferedOnceEveryRowWasShown() {
        assertTrue(button("Confirm all plausible readings").isDisabled());
        for (String value :
                new String[] {"lacks 30 degrees", "48 degrees", "lacks 10 degrees", "42 degrees", "38 mm"}) {
            clickOn(value);
        }
        assertFalse(button("Confirm all plausible readings").isDisabled());
        press("Confirm all plausible readings");
        assertEquals(4, model.confirmedCount());
    }

    @Test
    void aFailedSaveStaysOnScreenAndCanBeRepeated() {
        journal.failAfter(0);
        press("Confirm reading");
        assertTrue(shows(ListJournal.FAILURE));
        assertTrue(shows("Not saved"));
        WindowEvent closing = new WindowEvent(stage, WindowEvent.WINDOW_CLOSE_REQUEST);
        interact(() -> stage.fireEvent(closing));
        assertTrue(stage.isShowing(), "the window does not close over an unsaved change");
        journal.repair();
        press("Save change again");
        assertEquals(1, model.confirmedCount());
        assertFalse(shows(ListJournal.FAILURE));
    }
}
