package org.arcsay.review;

import static org.arcsay.review.DemoVisit.DOUBTFUL_ENTRY;
import static org.arcsay.review.DemoVisit.GAP_ENTRY;
import static org.arcsay.review.DemoVisit.HELD_ENTRY;
import static org.arcsay.review.DemoVisit.MP_EXTENSION_ENTRY;
import static org.arcsay.review.DemoVisit.MP_FLEXION_ENTRY;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Random;
import org.arcsay.model.Entry;
import org.arcsay.model.EntryStatus;
import org.arcsay.model.Heard;
import org.arcsay.model.JournalEvent;
import org.arcsay.model.JournalEvent.Confirmed;
import org.arcsay.model.JournalEvent.Rejected;
import org.arcsay.model.JournalEvent.Released;
import org.arcsay.model.JournalEvent.Taken;
import org.arcsay.model.Mode;
import org.arcsay.model.PatientCode;
import org.arcsay.model.Placement;
import org.arcsay.model.Remark;
import org.arcsay.model.Side;
import org.arcsay.model.Visit;
import org.arcsay.review.DraftReading.Field;
import org.junit.jupiter.api.Test;

class ReviewModelTest {
    private final ListJournal journal = new ListJournal();
    private final MemoryDrafts drafts = new MemoryDrafts();
    private final ReviewModel model = open();

    private ReviewModel open() {
        return ReviewModel.open(
                DemoVisit.visit(), DemoVisit.events(), journal, DemoVisit::judge, DemoVisit.context(), drafts);
    }

    @Test
    void doubtfulAndHeldRowsComeFirst() {
        assertEquals(List.of(3, 4, 1, 2, 5, 6), numbers());
        assertEquals(RowState.DOUBTFUL, row(DOUBTFUL_ENTRY).state());
        assertEquals(RowState.HELD, row(HELD_ENTRY).state());
        assertEquals(RowState.OPEN, row(MP_FLEXION_ENTRY).state());
    }

    @Test
    void aRowTellsWhatWasHeardAndUnderstood() {
        ReviewRow row = row(MP_EXTENSION_ENTRY);
        assertEquals(
                "\u201cem pee extension lacks ten degrees pain at end range\u201d (by voice, least sure word 97 %)",
                row.heard());
        assertEquals(
                "Right MP extension, active: lacks 10 degrees, measured on the dorsal side; pain at end range 3 of 10",
                row.understood());
        assertEquals("Right MP extension, active: lacks 10 degrees. To confirm.", row.spoken());
    }

    @Test
    void nothingIsConfirmedUnseen() {
        refused(model.confirm(MP_FLEXION_ENTRY), "Look at this reading first.");
        assertEquals(List.of(), journal.events());
        model.markSeen(MP_FLEXION_ENTRY);
        done(model.confirm(MP_FLEXION_ENTRY));
        assertEquals(new Confirmed(now(), MP_FLEXION_ENTRY, "KL"), last());
        refused(model.confirm(MP_FLEXION_ENTRY), "This reading is already confirmed.");
    }

    @Test
    void confirmingAllWaitsUntilEveryRowWasShown() {
        for (int number : List.of(1, 2, 3, 4, 5)) {
            model.markSeen(number);
        }
        refused(model.confirmAll(), "1 reading not looked at yet.");
        model.markSeen(6);
        assertEquals(Optional.empty(), model.obstacleToConfirmAll());
        done(model.confirmAll());
        assertEquals(4, model.confirmedCount());
        assertEquals(EntryStatus.UNCONFIRMED, row(DOUBTFUL_ENTRY).entry().status());
        assertEquals(EntryStatus.HELD, row(HELD_ENTRY).entry().status());
        assertFalse(model.visit().isFinal());
    }

    @Test
    void aHeldRowMustBeAnsweredBeforeItIsConfirmed() {
        seeAll();
        assertInstanceOf(Outcome.Refused.class, model.confirm(HELD_ENTRY));
        done(model.keepAsSaid(HELD_ENTRY, "measured twice"));
        assertEquals(new Released(now(), HELD_ENTRY, "KL", "measured twice"), last());
        assertEquals(RowState.DOUBTFUL, row(HELD_ENTRY).state());
        done(model.confirm(HELD_ENTRY));
        refused(model.keepAsSaid(HELD_ENTRY, ""), "This reading is not held, so there is nothing to answer.");
    }

    @Test
    void aVisitIsFinalWhenEveryRowWasConfirmed() {
        seeAll();
        done(model.keepAsSaid(HELD_ENTRY, ""));
        done(model.confirm(HELD_ENTRY));
        done(model.confirm(DOUBTFUL_ENTRY));
        done(model.confirmAll());
        assertTrue(model.visit().isFinal());
        assertEquals(OptionalInt.empty(), model.nextUnconfirmed(1));
        refused(model.confirmAll(), "No plausible reading is left to confirm; doubtful ones are confirmed one by one.");
    }

    @Test
    void theNextUnconfirmedRowGoesRoundInTheOrderShown() {
        assertEquals(OptionalInt.of(HELD_ENTRY), model.nextUnconfirmed(DOUBTFUL_ENTRY));
        assertEquals(OptionalInt.of(DOUBTFUL_ENTRY), model.nextUnconfirmed(GAP_ENTRY));
    }

    @Test
    void aCorrectionIsANewEntryThatReplacesTheOld() {
        Draft draft = model.draftOf(DOUBTFUL_ENTRY)
                .withSide(Side.LEFT)
                .withMeasure(DemoVisit.MP_FLEXION)
                .withMode(Mode.PASSIVE)
                .withValue("50")
                .withPlacement(Placement.LATERAL)
                .withPain(Optional.of(Remark.PainPlace.AT_END_RANGE), "4")
                .withFeel(Optional.of(Remark.Feel.STIFF))
                .withNote("second try")
                .withWhy("misheard");
        done(model.save(draft));
        Taken taken = assertInstanceOf(Taken.class, last());
        assertEquals(7, taken.entry());
        assertEquals(OptionalInt.of(DOUBTFUL_ENTRY), taken.replaces());
        assertEquals("left MP flexion, passive: 50 degrees", taken.reading().words());
        assertEquals(Placement.LATERAL, taken.reading().placement());
        assertEquals(
                List.of("pain at end range 4 of 10", "stiff", "second try"),
                taken.remarks().stream().map(Remark::words).toList());
        assertEquals(Heard.Source.TYPED, taken.heard().source());
        assertEquals("50", taken.heard().words());
        assertEquals("none", taken.heard().versions().model());
        assertEquals("misheard", taken.why());
        assertEquals(
                EntryStatus.SUPERSEDED,
                model.visit().entry(DOUBTFUL_ENTRY).orElseThrow().status());
        assertEquals(List.of(7, 4, 1, 2, 5, 6), numbers(), "a corrected row keeps its place");
        assertEquals(RowState.OPEN, row(7).state());
    }

    @Test
    void theHistoryTellsEveryStepWithItsReason() {
        done(model.save(model.draftOf(DOUBTFUL_ENTRY).withValue("50").withWhy("misheard")));
        done(model.confirm(7));
        assertEquals(
                List.of(
                        "Heard \u201ceye pee flexion fifteen\u201d: right IP flexion, active: 15 degrees",
                        "Typed \u201c50\u201d: right IP flexion, active: 50 degrees, by KL: misheard",
                        "Confirmed, by KL"),
                row(DOUBTFUL_ENTRY).history().stream()
                        .map(HistoryLine::sentence)
                        .toList());
    }

    @Test
    void remarksCanBeTakenAway() {
        Entry entry = row(MP_EXTENSION_ENTRY).entry();
        Draft draft =
                model.draftOf(MP_EXTENSION_ENTRY).withoutRemark(entry.remarks().get(0));
        done(model.save(draft));
        assertEquals(List.of(), row(MP_EXTENSION_ENTRY).entry().remarks());
        assertEquals(entry.reading(), row(MP_EXTENSION_ENTRY).entry().reading());
    }

    @Test
    void aCorrectionIsJudgedAnewAndHeldWhenItCannotBeTrue() {
        done(model.save(model.draftOf(MP_FLEXION_ENTRY).withValue("95")));
        assertEquals(RowState.DOUBTFUL, row(MP_FLEXION_ENTRY).state());
        done(model.save(model.draftOf(row(MP_FLEXION_ENTRY).number()).withValue("150")));
        assertEquals(RowState.HELD, row(MP_FLEXION_ENTRY).state());
    }

    @Test
    void theJudgeDoesNotSeeTheEntryThatIsReplaced() {
        ReviewModel watched = ReviewModel.open(
                DemoVisit.visit(),
                List.of(),
                journal,
                (reading, others) -> {
                    assertEquals(
                            List.of(2, 3, 4, 5, 6),
                            others.counting().stream().map(Entry::number).toList());
                    return List.of();
                },
                DemoVisit.context(),
                drafts);
        done(watched.save(watched.draftOf(MP_FLEXION_ENTRY).withValue("49")));
    }

    @Test
    void savingWithoutAChangeIsRefused() {
        refused(
                model.save(model.draftOf(MP_FLEXION_ENTRY)),
                "Nothing was changed. Change a field, or cancel the correction.");
    }

    @Test
    void aMissedReadingNeedsEveryFieldChosen() {
        DraftReading empty = model.read(Draft.empty());
        assertEquals("Choose the side: left or right.", empty.problem(Field.SIDE));
        assertEquals("Choose what was measured.", empty.problem(Field.MEASURE));
        assertEquals("Choose active or passive.", empty.problem(Field.MODE));
        Draft draft = Draft.empty()
                .withSide(Side.LEFT)
                .withMeasure(DemoVisit.TO_RING)
                .withMode(Mode.ACTIVE)
                .withValue("1.2 cm");
        done(model.save(draft));
        assertEquals(
                "left opposition to ring tip, active: 1.2 cm",
                row(7).entry().reading().words());
        assertEquals(OptionalInt.empty(), ((Taken) last()).replaces());
        assertEquals("missed reading added in review", ((Taken) last()).why());
    }

    @Test
    void painWithoutAPlaceOrWithABadScoreIsAProblem() {
        Draft draft = model.draftOf(MP_FLEXION_ENTRY);
        assertEquals(
                "Choose where the pain is felt, or clear the pain score.",
                model.read(draft.withPain(Optional.empty(), "4")).problem(Field.PAIN));
        assertEquals(
                "A pain score is a whole number from 0 to 10, not '11'.",
                model.read(draft.withPain(Optional.of(Remark.PainPlace.PRESENT), "11"))
                        .problem(Field.PAIN));
        assertEquals(
                "A note has at most 500 characters; this one has 501.",
                model.read(draft.withNote("x".repeat(501))).problem(Field.NOTE));
    }

    @Test
    void rejectingNeedsAReasonAndKeepsTheEntry() {
        refused(model.reject(GAP_ENTRY, " "), "Give a reason for rejecting this reading.");
        done(model.reject(GAP_ENTRY, "wrong patient"));
        assertEquals(new Rejected(now(), GAP_ENTRY, "KL", "wrong patient"), last());
        assertEquals(List.of(3, 4, 1, 2, 5), numbers());
        ReviewRow rejected = model.rejected().get(0);
        assertEquals("Rejected, by KL: wrong patient", rejected.history().get(1).sentence());
        refused(model.reject(GAP_ENTRY, "again"), "This reading is already rejected.");
        refused(
                model.save(Draft.of(rejected.entry()).withValue("40 mm")),
                "This reading was rejected. Undo the rejection before correcting it.");
    }

    @Test
    void everyActionCanBeTakenBackByOneMoreEvent() {
        seeAll();
        done(model.confirm(MP_FLEXION_ENTRY));
        done(model.save(model.draftOf(DOUBTFUL_ENTRY).withValue("50")));
        done(model.keepAsSaid(HELD_ENTRY, "sure"));
        done(model.reject(GAP_ENTRY, "wrong"));
        done(model.confirmAll());
        done(model.save(Draft.empty()
                .withSide(Side.LEFT)
                .withMeasure(DemoVisit.RADIAL)
                .withMode(Mode.ACTIVE)
                .withValue("40")));
        int before = journal.events().size();
        while (model.undoWords().isPresent()) {
            done(model.undo());
        }
        assertTrue(journal.events().size() > before);
        assertEquals(
                DemoVisit.visit().counting().stream()
                        .map(ReviewModelTest::content)
                        .sorted()
                        .toList(),
                model.visit().counting().stream()
                        .map(ReviewModelTest::content)
                        .sorted()
                        .toList());
        assertEquals(0, model.confirmedCount());
        assertEquals(
                "confirmation taken back",
                row(MP_FLEXION_ENTRY).history().stream()
                        .reduce((a, b) -> b)
                        .orElseThrow()
                        .why());
        refused(model.undo(), "Nothing was changed in this review yet.");
    }

    @Test
    void undoNamesWhatItWouldTakeBack() {
        done(model.reject(GAP_ENTRY, "wrong"));
        assertEquals(Optional.of("the rejection of right opposition to ring tip, active"), model.undoWords());
    }

    @Test
    void closingAtAnyTimeLosesNothing() {
        seeAll();
        done(model.save(model.draftOf(DOUBTFUL_ENTRY).withValue("50")));
        done(model.confirm(MP_FLEXION_ENTRY));
        model.keepDraft(model.draftOf(GAP_ENTRY).withValue("3"));
        ReviewModel reopened =
                ReviewModel.open(stored(), DemoVisit.events(), journal, DemoVisit::judge, DemoVisit.context(), drafts);
        assertEquals(model.visit(), reopened.visit());
        assertEquals("3", reopened.draftOf(GAP_ENTRY).value());
        assertTrue(reopened.row(GAP_ENTRY).orElseThrow().drafted());
    }

    @Test
    void aHalfTypedCorrectionBlocksConfirmingUntilItIsSavedOrCancelled() {
        seeAll();
        model.keepDraft(model.draftOf(GAP_ENTRY).withValue("3"));
        refused(
                model.confirm(GAP_ENTRY),
                "A correction of this reading is half typed. Save or cancel the correction first.");
        done(model.confirmAll());
        assertEquals(EntryStatus.UNCONFIRMED, row(GAP_ENTRY).entry().status());
        model.dropDraft(GAP_ENTRY);
        done(model.confirm(GAP_ENTRY));
    }

    @Test
    void aFormTypedBackToWhatItWasIsNoDraft() {
        model.keepDraft(model.draftOf(GAP_ENTRY).withValue("3"));
        model.keepDraft(model.draftOf(GAP_ENTRY).withValue("38 mm"));
        assertFalse(model.hasDraft(GAP_ENTRY));
    }

    @Test
    void aFailedJournalShowsOnTheRowAndIsTriedAgain() {
        Draft draft = model.draftOf(DOUBTFUL_ENTRY).withValue("50");
        model.keepDraft(draft);
        journal.failAfter(0);
        assertEquals(new Outcome.NotSaved(ListJournal.FAILURE), model.save(draft));
        assertEquals(RowState.NOT_SAVED, row(DOUBTFUL_ENTRY).state());
        assertEquals(
                Optional.of(new Unsaved(
                        DOUBTFUL_ENTRY, "Corrected: right IP flexion, active: 50 degrees.", ListJournal.FAILURE)),
                model.unsaved());
        assertTrue(model.hasDraft(DOUBTFUL_ENTRY));
        model.markSeen(MP_FLEXION_ENTRY);
        assertInstanceOf(Outcome.Refused.class, model.confirm(MP_FLEXION_ENTRY));
        assertInstanceOf(Outcome.NotSaved.class, model.retry());
        journal.repair();
        done(model.retry());
        assertEquals("50 degrees", row(DOUBTFUL_ENTRY).value());
        assertEquals(1, journal.events().size());
        assertFalse(model.hasDraft(DOUBTFUL_ENTRY));
        assertEquals(Optional.empty(), model.unsaved());
    }

    @Test
    void aFailedChangeCanBeGivenUpAndLeavesTheDraft() {
        Draft draft = model.draftOf(DOUBTFUL_ENTRY).withValue("50");
        model.keepDraft(draft);
        journal.failAfter(0);
        model.save(draft);
        model.discardUnsaved();
        assertEquals(RowState.DOUBTFUL, row(DOUBTFUL_ENTRY).state());
        assertEquals("50", model.draftOf(DOUBTFUL_ENTRY).value());
        refused(model.retry(), "Everything is saved.");
    }

    @Test
    void screenAndJournalAgreeWhereverTheDiskFails() {
        for (int fault = 0; fault < 12; fault++) {
            journal.events().clear();
            journal.failAfter(fault);
            ReviewModel failing = open();
            failing.rows().forEach(row -> failing.markSeen(row.number()));
            failing.confirmAll();
            failing.keepAsSaid(HELD_ENTRY, "");
            failing.reject(GAP_ENTRY, "wrong");
            failing.save(failing.draftOf(DOUBTFUL_ENTRY).withValue("50"));
            failing.undo();
            failing.undo();
            assertEquals(stored(), failing.visit(), "fault at event " + fault);
            journal.repair();
            failing.retry();
            while (failing.undoWords().isPresent()) {
                done(failing.undo());
            }
            assertEquals(stored(), failing.visit(), "after repair of event " + fault);
        }
    }

    @Test
    void randomReviewsNeverConfirmWhatWasNotShownAndAlwaysReplay() {
        Random random = new Random(4711);
        for (int round = 0; round < 300; round++) {
            journal.events().clear();
            ReviewModel reviewed = open();
            for (int step = 0; step < 15; step++) {
                act(reviewed, random);
                assertEquals(stored(), reviewed.visit());
            }
            for (ReviewRow row : reviewed.rows()) {
                assertTrue(row.entry().status() != EntryStatus.CONFIRMED || row.seen(), row.spoken());
            }
        }
    }

    @Test
    void listenersHearOfEveryChange() {
        int[] calls = {0};
        model.onChange(() -> calls[0]++);
        model.markSeen(1);
        model.markSeen(1);
        model.confirm(1);
        assertEquals(2, calls[0]);
    }

    @Test
    void draftsThatCannotBeKeptAreSaidSo() {
        ReviewModel fragile = ReviewModel.open(
                DemoVisit.visit(), List.of(), journal, DemoVisit::judge, DemoVisit.context(), new Drafts() {
                    @Override
                    public List<Draft> load(long visit) throws IOException {
                        throw new IOException("A half-typed correction could not be read.");
                    }

                    @Override
                    public void keep(long visit, List<Draft> ignored) throws IOException {
                        throw new IOException("no space left");
                    }
                });
        assertEquals("A half-typed correction could not be read.", fragile.draftProblem());
        fragile.keepDraft(fragile.draftOf(GAP_ENTRY).withValue("3"));
        assertTrue(fragile.draftProblem().contains("no space left"));
        assertEquals("3", fragile.draftOf(GAP_ENTRY).value());
    }

    private void act(ReviewModel reviewed, Random random) {
        int number = 1 + random.nextInt(reviewed.visit().entries().size());
        Optional<ReviewRow> row = reviewed.row(number);
        switch (random.nextInt(7)) {
            case 0 -> reviewed.confirm(number);
            case 1 -> reviewed.confirmAll();
            case 2 -> reviewed.reject(number, "because");
            case 3 -> reviewed.undo();
            case 4 -> reviewed.keepAsSaid(number, "");
            case 5 ->
                row.ifPresent(shown ->
                        reviewed.save(reviewed.draftOf(shown.number()).withValue(String.valueOf(random.nextInt(160)))));
            default -> row.ifPresent(shown -> reviewed.markSeen(shown.number()));
        }
    }

    private Visit stored() {
        return Visit.begun(7, new PatientCode("TH-014"), DemoVisit.START)
                .replay(DemoVisit.events())
                .replay(journal.events());
    }

    private static String content(Entry entry) {
        return entry.reading().words() + entry.remarks() + entry.status() + entry.heard();
    }

    private List<Integer> numbers() {
        return model.rows().stream().map(ReviewRow::number).toList();
    }

    private ReviewRow row(int number) {
        return model.row(number).orElseThrow();
    }

    private void seeAll() {
        model.rows().forEach(row -> model.markSeen(row.number()));
    }

    private JournalEvent last() {
        return journal.events().get(journal.events().size() - 1);
    }

    private static java.time.OffsetDateTime now() {
        return java.time.OffsetDateTime.now(DemoVisit.CLOCK);
    }

    private static void done(Outcome outcome) {
        assertInstanceOf(Outcome.Done.class, outcome, outcome.message());
    }

    private static void refused(Outcome outcome, String message) {
        assertEquals(new Outcome.Refused(message), outcome);
    }
}
