package org.arcsay.review;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Optional;
import org.arcsay.analysis.SeriesPlans;
import org.arcsay.model.JournalEvent.Confirmed;
import org.arcsay.model.JournalEvent.Rejected;
import org.arcsay.model.PatientCode;
import org.arcsay.model.Side;
import org.arcsay.model.Visit;
import org.junit.jupiter.api.Test;

class HomeModelTest {
    private final HomeScript actions = new HomeScript(DemoVisit.visit());
    private final HomeModel model = new HomeModel(actions);

    private static HomeModel.Choice choice(String code) {
        return new HomeModel.Choice(
                code, Optional.of(Side.LEFT), SeriesPlans.standard().all().get(1), Optional.of("Headset"));
    }

    @Test
    void whatIsChosenIsWhatIsBegun() {
        model.measure(choice("TH-014"));
        assertEquals(
                List.of(new MeasuringStart(
                        new PatientCode("TH-014"),
                        Optional.of(Side.LEFT),
                        SeriesPlans.standard().all().get(1),
                        Optional.of("Headset"))),
                actions.starts());
        assertEquals(Optional.of("Headset"), model.usualMicrophone(), "remembered");
    }

    @Test
    void aCodeThatWasChangedSinceTheQuestionIsAskedAboutAgain() {
        model.measure(choice("TH-041"));
        assertEquals(Optional.empty(), model.measureNew(choice("TH-042")));
        assertEquals(Optional.of(new PatientCode("TH-042")), model.newPatient());
        assertEquals(List.of(), actions.begun());
    }

    @Test
    void aKnownPatientIsMeasuredAtOnce() {
        assertTrue(model.measure(choice(" TH-014 ")).isPresent());
        assertEquals(List.of("TH-014"), actions.begun());
        assertEquals("", model.message());
    }

    @Test
    void anUnknownCodeIsAskedAboutBecauseItMayBeASlip() {
        assertEquals(Optional.empty(), model.measure(choice("TH-041")));
        assertEquals(List.of(), actions.begun());
        assertEquals(Optional.of(new PatientCode("TH-041")), model.newPatient());
        assertEquals(
                "'TH-041' has no visit here. Correct the code, or begin with it as a new patient.", model.message());
        assertTrue(model.measureNew(choice("TH-041")).isPresent());
        assertEquals(List.of("TH-041"), actions.begun());
        assertEquals(Optional.empty(), model.measureNew(choice("TH-041")), "only once");
    }

    @Test
    void correctingTheCodeForgetsTheNewPatient() {
        model.measure(choice("TH-041"));
        model.measure(choice("TH-014"));
        assertEquals(Optional.empty(), model.newPatient());
        assertEquals(List.of("TH-014"), actions.begun());
    }

    @Test
    void whatIsNoCodeIsRefusedWithTheRule() {
        model.measure(choice(""));
        assertEquals("Type the patient's code first. Use a code of your clinic and no name.", model.message());
        model.measure(choice("a b"));
        assertTrue(model.message().startsWith("'a b' is not a patient code: use 1 to 40 letters"), model.message());
        assertEquals(List.of(), actions.begun());
    }

    @Test
    void failuresAreSaidAndNothingIsLost() {
        actions.breakDisk();
        assertEquals(Optional.empty(), model.review(7));
        assertEquals(ListJournal.FAILURE, model.message());
        model.refresh();
        assertEquals(1, model.recent().size());
    }

    @Test
    void progressIsToldInWords() {
        Visit visit = DemoVisit.visit();
        assertEquals("0 of 6 readings confirmed", HomeModel.progress(visit));
        assertEquals("No readings", HomeModel.progress(Visit.begun(1, visit.patient(), DemoVisit.START)));
        for (int number = 2; number <= 6; number++) {
            visit = visit.apply(new Rejected(DemoVisit.START, number, "", ""));
        }
        assertEquals("Final, 1 reading", HomeModel.progress(visit.apply(new Confirmed(DemoVisit.START, 1, ""))));
    }
}
