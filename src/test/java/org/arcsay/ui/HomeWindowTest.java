package org.arcsay.ui;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Optional;
import javafx.scene.input.KeyCode;
import org.arcsay.analysis.SeriesPlans;
import org.arcsay.model.PatientCode;
import org.arcsay.model.Side;
import org.arcsay.review.DemoVisit;
import org.arcsay.review.HomeModel;
import org.arcsay.review.HomeScript;
import org.arcsay.review.MeasuringStart;
import org.junit.jupiter.api.Test;
import org.testfx.util.WaitForAsyncUtils;

class HomeWindowTest extends HeadlessWindow {
    private HomeScript actions;

    @Override
    protected void show() {
        actions = new HomeScript(DemoVisit.visit());
        HomeWindow.show(stage, new HomeModel(actions), Look.standard());
    }

    @Test
    void aNewPatientIsBegunByKeyboardAloneAfterASecondLook() {
        write("TH-041");
        push(KeyCode.ENTER);
        assertEquals(List.of(), actions.begun());
        assertTrue(shows("'TH-041' has no visit here."));
        press("Begin with new patient TH-041");
        assertEquals(List.of("TH-041"), actions.begun());
        assertTrue(listTargetWindows().stream().anyMatch(window -> window.isShowing() && window != stage));
    }

    @Test
    void handSeriesAndMicrophoneAreChosenByKeyboardAlone() {
        write("TH-014");
        push(KeyCode.TAB);
        push(KeyCode.DOWN);
        push(KeyCode.DOWN);
        push(KeyCode.TAB);
        push(KeyCode.DOWN);
        push(KeyCode.TAB);
        push(KeyCode.DOWN);
        push(KeyCode.ALT, KeyCode.S);
        assertEquals(
                List.of(new MeasuringStart(
                        new PatientCode("TH-014"),
                        Optional.of(Side.RIGHT),
                        SeriesPlans.standard().all().get(1),
                        Optional.of("Desk microphone"))),
                actions.starts());
    }

    @Test
    void theMicrophoneIsTriedBeforeMeasuringAndLetGoThen() {
        press("Try microphone");
        WaitForAsyncUtils.waitForFxEvents();
        assertTrue(shows("Sound: good"));
        write("TH-014");
        press("Stop trying microphone");
        press("Try microphone");
        press("Start measuring");
        assertEquals(List.of("usual", "closed", "usual", "closed"), actions.tried());
    }

    @Test
    void theMicrophoneOfLastTimeIsOfferedFirst() {
        actions.withUsualMicrophone("Headset");
        interact(() -> HomeWindow.show(stage, new HomeModel(actions), Look.standard()));
        press("Try microphone");
        assertEquals(List.of("Headset"), actions.tried());
    }

    @Test
    void measuringBeginsAtTheTextSizeThatWasChosen() {
        for (int size = 0; size < 4; size++) {
            push(KeyCode.CONTROL, KeyCode.PLUS);
        }
        clickOn(".begin-row .text-field");
        write("TH-014");
        push(KeyCode.ENTER);
        assertTrue(shows("Listening") || shows("Getting ready"));
        assertTrue(shows("Say \u201cright hand\u201d or \u201cleft hand\u201d"));
    }

    @Test
    void aRecentVisitOpensItsReview() {
        press("Review visit 7");
        assertTrue(shows("0 of 6 readings confirmed"));
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
