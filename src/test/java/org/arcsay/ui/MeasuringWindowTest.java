package org.arcsay.ui;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import javafx.scene.Node;
import javafx.scene.control.Label;
import javafx.scene.input.KeyCode;
import org.arcsay.review.Listening;
import org.arcsay.review.MeasuringModel;
import org.arcsay.review.MeasuringScript;
import org.junit.jupiter.api.Test;
import org.testfx.util.WaitForAsyncUtils;

class MeasuringWindowTest extends HeadlessWindow {
    private MeasuringScript script;

    @Override
    protected void show() {
        script = new MeasuringScript().untilDoubt();
        MeasuringModel model = script.model();
        MeasuringWindow.show(stage, model, Look.standard());
    }

    @Test
    void whatIsExpectedUnderstoodAndAskedIsOnTheScreen() {
        assertTrue(shows("RIGHT hand, active"));
        assertTrue(shows("Right CMC palmar abduction, active"));
        assertTrue(shows("100 degrees"));
        assertTrue(shows("Is it right?"));
        assertTrue(shows("lacks 5\u00b0"));
        assertTrue(shows("not tested"));
        assertTrue(shows("missing"));
    }

    @Test
    void theValueCanBeReadAtTwoMetresAtEveryTextSize() {
        for (int size = 0; size < 5; size++) {
            double pixels =
                    ((Label) stage.getScene().lookup(".last-value")).getFont().getSize();
            assertTrue(pixels >= 48, pixels + " px");
            push(KeyCode.CONTROL, KeyCode.PLUS);
        }
    }

    @Test
    void thePictureOfTheSeriesMarksWhatIsToBeLookedAt() {
        assertTrue(lookup((Label cell) -> "100\u00b0".equals(cell.getText())
                        && cell.getStyleClass().contains("state-doubt")
                        && String.valueOf(cell.getAccessibleText()).endsWith(", to be looked at"))
                .tryQuery()
                .isPresent());
        assertTrue(lookup((Label cell) -> "75\u00b0".equals(cell.getText())
                        && cell.getStyleClass().contains("state-sure"))
                .tryQuery()
                .isPresent());
    }

    @Test
    void aQuestionIsAnsweredByMouse() {
        press("Answer yes");
        WaitForAsyncUtils.waitForFxEvents();
        assertTrue(script.session().question().isEmpty());
        assertFalse(shows("Is it right?"));
    }

    @Test
    void everythingThatCanBeSaidCanBeTyped() {
        push(KeyCode.F2);
        write("affirm");
        push(KeyCode.ENTER);
        write("opposition ring thirty eight millimeters");
        push(KeyCode.ENTER);
        assertTrue(shows("38 mm"));
        press("Pause listening");
        assertTrue(shows(Listening.PAUSED.words()));
        press("Resume listening");
        press("Undo last reading");
        assertEquals(6, script.session().visit().counting().size());
    }

    @Test
    void everyControlHasARoleANameAndRoom() {
        everyControlHasARoleANameAndRoomAtEverySize();
    }

    @Test
    void theReviewFollowsWhenTheSessionEnds() {
        press("Answer yes");
        press("End session");
        WaitForAsyncUtils.waitForFxEvents();
        assertTrue(shows("0 of 6 readings confirmed"));
        assertEquals(1, script.timesClosed());
    }

    @Test
    void closingTellsTheCapture() {
        interact(() -> stage.hide());
        assertEquals(1, script.timesClosed());
    }

    @Test
    void everyControlIsReachedByKeyboard() {
        everyControlIsReachedByTabAndShowsThatItHasTheFocus();
    }

    @Test
    void atTwiceTheTextSizeTheLastValueIsWholeBesideANoticeAndAQuestion() {
        script.model()
                .update(state -> state.with(
                        Listening.TYPING,
                        "No microphone was found. Plug one in and try again; entries can also be typed."));
        for (int size = 0; size < 4; size++) {
            push(KeyCode.CONTROL, KeyCode.PLUS);
        }
        WaitForAsyncUtils.waitForFxEvents();
        Node value = stage.getScene().lookup(".last-value");
        assertTrue(shows("Is it right?"));
        double bottom = value.localToScene(value.getBoundsInLocal()).getMaxY();
        assertTrue(bottom <= stage.getScene().getHeight(), bottom + " px");
    }
}
