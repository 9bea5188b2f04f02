package org.arcsay.session;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.List;
import org.arcsay.model.ClinicSettings;
import org.arcsay.model.EntryStatus;
import org.arcsay.model.Heard;
import org.arcsay.model.LengthUnit;
import org.arcsay.model.Mode;
import org.arcsay.model.SignConvention;
import org.arcsay.model.Visit;
import org.arcsay.session.Outcome.Why;
import org.arcsay.store.StoreException;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class VisitSessionTest {
    @TempDir
    private Path folder;

    private Dictation dictation;

    @BeforeEach
    void open() throws StoreException {
        dictation = new Dictation(folder, ClinicSettings.defaults());
    }

    /** Whatever a test did, the file replays to the state that the session shows. */
    @AfterEach
    void theDatabaseAgreesWithTheSession() throws StoreException {
        assertEquals(
                dictation.session.visit(),
                dictation.store.visit(dictation.session.visit().id()).orElseThrow());
        dictation.close();
    }

    private <T extends Outcome> T say(Class<T> expected, String words) {
        return assertInstanceOf(expected, dictation.say(words), words);
    }

    private Why refused(String words) {
        return say(Outcome.Refused.class, words).why();
    }

    private <T extends Question> T asked(Class<T> expected, String words) {
        return assertInstanceOf(expected, say(Outcome.Asked.class, words).question(), words);
    }

    @Test
    void aReadingIsStoredWithItsContextWordsAndVersions() throws StoreException {
        dictation.say("right hand");
        var saved = say(Outcome.Saved.class, "i p flexion seventy five");
        assertEquals(List.of("right IP flexion, active: 75 degrees"), dictation.stored());
        Heard heard = saved.entries().get(0).heard();
        assertEquals("i p flexion seventy five", heard.words());
        assertEquals(Dictation.VERSIONS, heard.versions());
        assertTrue(heard.end().compareTo(heard.start()) > 0);
        assertEquals(EntryStatus.UNCONFIRMED, saved.entries().get(0).status());
    }

    @Test
    void theOtherHandBeginsAtItsFirstOpenMeasure() {
        dictation.say("right hand");
        dictation.say("opposition little touches");
        assertEquals(
                "right opposition to little base, active",
                dictation.session.next().orElseThrow().words());
        dictation.say("left hand");
        assertEquals(
                "left MP flexion, active",
                dictation.session.next().orElseThrow().words());
    }

    /** What was refused is what the therapist wants to put right; the reading before it must not change instead. */
    @Test
    void aBareCorrectionAfterARefusalChangesNothing() throws StoreException {
        dictation.say("right hand");
        dictation.say("i p lacks ten degrees of extension");
        dictation.say("[unk] flexion seventy");
        var refused = assertInstanceOf(Outcome.Refused.class, dictation.say("correction fifty five"));
        assertEquals(Outcome.Why.NOTHING_TO_CHANGE, refused.why());
        assertEquals(List.of("right IP extension, active: lacks 10 degrees"), dictation.stored());
        dictation.say("correction i p lacks fifteen");
        assertEquals(List.of("right IP extension, active: lacks 15 degrees"), dictation.stored());
        dictation.say("correction twelve");
        assertEquals(List.of("right IP extension, active: lacks 12 degrees"), dictation.stored());
    }

    @Test
    void handAndModeHoldUntilChanged() throws StoreException {
        dictation.say("right thumb passive");
        dictation.say("m p flexion fifty");
        dictation.say("other hand");
        dictation.say("m p flexion sixty");
        dictation.say("active");
        dictation.say("m p flexion fifty five");
        assertEquals(
                List.of(
                        "right MP flexion, passive: 50 degrees",
                        "left MP flexion, passive: 60 degrees",
                        "left MP flexion, active: 55 degrees"),
                dictation.stored());
    }

    @Test
    void withoutAHandNothingIsStoredUntilItIsNamed() throws StoreException {
        asked(Question.WhichHand.class, "i p flexion seventy");
        assertEquals(List.of(), dictation.stored());
        say(Outcome.Saved.class, "left hand");
        assertEquals(List.of("left IP flexion, active: 70 degrees"), dictation.stored());
    }

    @Test
    void theJointAloneIsFlexionAndSaysThatItWasImplied() {
        dictation.say("left hand");
        assertTrue(say(Outcome.Saved.class, "i p seventy five").motionImplied());
        assertEquals(false, say(Outcome.Saved.class, "m p flexion fifty").motionImplied());
    }

    @Test
    void anArcGivesTwoEntriesAndIsTakenBackAsOne() throws StoreException {
        dictation.say("left hand");
        dictation.say("m p ten to fifty");
        assertEquals(
                List.of("left MP extension, active: lacks 10 degrees", "left MP flexion, active: 50 degrees"),
                dictation.stored());
        say(Outcome.Undone.class, "disregard that");
        assertEquals(List.of(), dictation.stored());
    }

    @ParameterizedTest
    @CsvSource({
        "MINUS_IS_DEFICIT, minus, lacks 10 degrees",
        "MINUS_IS_DEFICIT, plus, hyperextends 10 degrees",
        "MINUS_IS_HYPEREXTENSION, minus, hyperextends 10 degrees",
        "MINUS_IS_HYPEREXTENSION, plus, lacks 10 degrees",
    })
    void aBareSignFollowsTheConventionOfTheClinic(SignConvention convention, String sign, String meaning)
            throws StoreException {
        dictation.close();
        dictation = new Dictation(folder, new ClinicSettings(convention, LengthUnit.MILLIMETRE));
        dictation.say("left hand");
        say(Outcome.Saved.class, "i p extension " + sign + " ten");
        assertEquals(List.of("left IP extension, active: " + meaning), dictation.stored());
    }

    @Test
    void aBareSignWithoutAConventionIsAskedAndNeverGuessed() throws StoreException {
        dictation.say("left hand");
        asked(Question.WhichKind.class, "i p extension minus ten");
        assertEquals(List.of(), dictation.stored());
        say(Outcome.Saved.class, "extension deficit");
        assertEquals(List.of("left IP extension, active: lacks 10 degrees"), dictation.stored());
        asked(Question.WhichKind.class, "m p extension ten");
        say(Outcome.Saved.class, "hyperextension");
        assertEquals(
                "left MP extension, active: hyperextends 10 degrees",
                dictation.stored().get(1));
    }

    /** Extension lag is what lacks on active testing (Uejo C, 2007, as quoted: seen). */
    @Test
    void aLagIsActiveByItsMeaning() throws StoreException {
        dictation.say("left thumb passive");
        say(Outcome.Saved.class, "i p extension lag ten");
        assertEquals(List.of("left IP extension, active: lacks 10 degrees"), dictation.stored());
        assertEquals(Why.CONTRADICTORY, refused("passive i p extension lag ten"));
    }

    @Test
    void aCorrectionReplacesTheLastValueAndKeepsTheOldOne() throws StoreException {
        dictation.say("right hand");
        dictation.say("i p flexion sixteen");
        var corrected = say(Outcome.Corrected.class, "correction sixty");
        assertEquals(
                "right IP flexion, active: 16 degrees",
                corrected.before().reading().words());
        assertEquals(List.of("right IP flexion, active: 60 degrees"), dictation.stored());
        assertEquals(
                List.of(EntryStatus.SUPERSEDED, EntryStatus.UNCONFIRMED),
                dictation.session.visit().entries().stream()
                        .map(e -> e.status())
                        .toList());
    }

    @Test
    void aCorrectionKeepsKindAndUnitUnlessSaidOtherwise() throws StoreException {
        dictation.say("right hand");
        dictation.say("i p extension deficit fifteen");
        dictation.say("correction five");
        dictation.say("opposition ring three point eight centimeters");
        dictation.say("correction two point eight");
        assertEquals(
                List.of("right IP extension, active: lacks 5 degrees", "right opposition to ring tip, active: 2.8 cm"),
                dictation.stored());
        dictation.say("correction two eight millimeters");
        assertEquals(
                "right opposition to ring tip, active: 28 mm",
                dictation.stored().get(1));
    }

    @Test
    void aCorrectionMayChangeJointHandOrMode() throws StoreException {
        dictation.say("right hand");
        dictation.say("i p flexion fifty");
        dictation.say("correction m p flexion fifty");
        assertEquals(List.of("right MP flexion, active: 50 degrees"), dictation.stored());
        dictation.say("correction left hand");
        dictation.say("correction passive");
        assertEquals(List.of("left MP flexion, passive: 50 degrees"), dictation.stored());
    }

    @Test
    void takingBackACorrectionBringsTheOldReadingBack() throws StoreException {
        dictation.say("right hand");
        dictation.say("i p flexion sixty");
        dictation.say("correction seventy");
        var undone = say(Outcome.Undone.class, "disregard that");
        assertEquals(1, undone.restored().size());
        assertEquals(List.of("right IP flexion, active: 60 degrees"), dictation.stored());
    }

    @Test
    void undoGoesBackOneUtteranceAtATimeAndStopsAtNothing() throws StoreException {
        dictation.say("right hand");
        dictation.say("i p flexion sixty");
        dictation.say("m p flexion forty");
        dictation.say("disregard that");
        dictation.say("disregard that");
        assertEquals(List.of(), dictation.stored());
        assertEquals(Why.NOTHING_TO_CHANGE, refused("disregard that"));
        assertEquals(Why.NOTHING_TO_CHANGE, refused("correction fifty"));
    }

    @Test
    void aNumberWithoutAJointIsRefusedAndAJointWithoutANumberWaitsForIt() throws StoreException {
        dictation.say("right hand");
        assertEquals(Why.NO_JOINT, refused("seventy five"));
        asked(Question.WhichValue.class, "i p flexion");
        say(Outcome.Saved.class, "seventy five");
        asked(Question.WhichValue.class, "m p extension lag");
        say(Outcome.Saved.class, "ten");
        assertEquals(
                List.of("right IP flexion, active: 75 degrees", "right MP extension, active: lacks 10 degrees"),
                dictation.stored());
        assertEquals(Why.NO_JOINT, refused("ten to fifty"));
    }

    @Test
    void anImplausibleValueIsHeldAndAsked() throws StoreException {
        dictation.say("right hand");
        var question = asked(Question.IsItRight.class, "i p flexion one seventy");
        assertEquals(
                EntryStatus.HELD, dictation.session.visit().entries().get(0).status());
        assertTrue(question.sentence().contains("170"), question.sentence());
        say(Outcome.Corrected.class, "no seventy");
        assertEquals(List.of("right IP flexion, active: 70 degrees"), dictation.stored());
    }

    @Test
    void anUnusualButTrueValueIsKeptAfterYes() throws StoreException {
        dictation.say("right hand");
        asked(Question.IsItRight.class, "m p hyperextension seventy");
        say(Outcome.Kept.class, "affirm");
        assertEquals(List.of("right MP extension, active: hyperextends 70 degrees"), dictation.stored());
    }

    @Test
    void noAloneTakesTheDoubtedValueBack() throws StoreException {
        dictation.say("right hand");
        asked(Question.IsItRight.class, "m p hyperextension seventy");
        say(Outcome.Undone.class, "negative");
        assertEquals(List.of(), dictation.stored());
    }

    @Test
    void theWholeReadingAnswersADoubt() throws StoreException {
        dictation.say("right hand");
        asked(Question.IsItRight.class, "m p hyperextension seventy");
        say(Outcome.Corrected.class, "m p hyperextension seventeen");
        assertEquals(List.of("right MP extension, active: hyperextends 17 degrees"), dictation.stored());
        asked(Question.IsItRight.class, "i p hyperextension seventy");
        say(Outcome.Kept.class, "i p hyperextension seventy");
    }

    @Test
    void flexionBelowTheDeficitIsHeld() throws StoreException {
        dictation.say("right hand");
        dictation.say("i p extension deficit thirty");
        asked(Question.IsItRight.class, "i p flexion twenty");
        assertEquals(
                EntryStatus.HELD, dictation.session.visit().entries().get(1).status());
    }

    @Test
    void measuredAgainIsASecondTrialOrAReplacement() throws StoreException {
        dictation.say("right hand");
        dictation.say("i p flexion sixty");
        asked(Question.Again.class, "i p flexion sixty four");
        say(Outcome.Kept.class, "second trial");
        assertEquals(2, dictation.stored().size());
        asked(Question.Again.class, "i p flexion sixty six");
        say(Outcome.Corrected.class, "correct that");
        assertEquals(
                List.of("right IP flexion, active: 60 degrees", "right IP flexion, active: 66 degrees"),
                dictation.stored());
    }

    @Test
    void afterThreeAnswersThatDoNotFitItStopsAskingAndGoesOn() throws StoreException {
        dictation.say("right hand");
        asked(Question.IsItRight.class, "m p hyperextension seventy");
        for (int i = 0; i < 3; i++) {
            assertEquals(Why.NOT_UNDERSTOOD, refused("how does that feel"));
        }
        assertTrue(dictation.session.question().isEmpty());
        say(Outcome.Saved.class, "i p flexion sixty");
        assertEquals(2, dictation.stored().size());
        assertTrue(dictation.session.visit().entries().get(0).doubtful());
    }

    @Test
    void aReadingOfSomethingElseLeavesTheQuestionForTheReview() throws StoreException {
        dictation.say("right hand");
        asked(Question.IsItRight.class, "m p hyperextension seventy");
        say(Outcome.Saved.class, "i p flexion sixty");
        assertEquals(Why.NO_QUESTION, refused("affirm"));
        assertEquals(2, dictation.stored().size());
    }

    @Test
    void wordsWithoutANumberAreKeptAndTheNumberAskedOnce() throws StoreException {
        dictation.say("right hand");
        asked(Question.WhichNumber.class, "i p flexion within normal limits");
        say(Outcome.Corrected.class, "eighty");
        assertEquals(List.of("right IP flexion, active: 80 degrees"), dictation.stored());
    }

    @Test
    void whilePausedNothingButGoAheadIsHeard() throws StoreException {
        dictation.say("right hand");
        say(Outcome.Paused.class, "stand by");
        say(Outcome.Ignored.class, "i p flexion fifty");
        say(Outcome.Ignored.class, "how does that feel");
        say(Outcome.Ignored.class, "disregard that");
        say(Outcome.Listening.class, "go ahead");
        assertEquals(List.of(), dictation.stored());
    }

    @Test
    void remarksGoToTheLastReading() {
        dictation.say("right hand");
        assertEquals(Why.NOTHING_TO_CHANGE, refused("pain at end range"));
        dictation.say("i p flexion sixty");
        var remarked = say(Outcome.Remarked.class, "pain four out of ten");
        assertEquals("pain 4 of 10", remarked.entry().remarks().get(0).words());
    }

    @Test
    void theSeriesTellsWhatIsMissingAndNextAndMayBeLeftOut() throws StoreException {
        dictation.say("right hand");
        int all = say(Outcome.Missing.class, "what is missing").slots().size();
        String next = say(Outcome.Next.class, "next").slot().orElseThrow().words();
        assertEquals("right MP flexion, active", next);
        say(Outcome.Saved.class, "skip that because of splint");
        assertEquals(List.of("right MP flexion, active: not tested: splint"), dictation.stored());
        assertEquals(
                all - 1, say(Outcome.Missing.class, "what is missing").slots().size());
        dictation.say("i p flexion sixty");
        assertEquals(
                "right IP extension, active",
                say(Outcome.Position.class, "where am i").next().orElseThrow().words());
        assertEquals(2, say(Outcome.ReadBack.class, "read back").entries().size());
    }

    @Test
    void unitsOfTheSeriesStickAndAreMixedOnlyWithAQuestion() throws StoreException {
        dictation.say("right hand");
        dictation.say("opposition index two centimeters");
        dictation.say("opposition middle one point five");
        assertEquals(
                "right opposition to middle tip, active: 1.5 cm",
                dictation.stored().get(1));
        asked(Question.IsItRight.class, "opposition ring thirty millimeters");
    }

    @Test
    void anEndedSessionSaysWhen() throws StoreException {
        dictation.say("right hand");
        dictation.say("i p flexion sixty");
        say(Outcome.Ended.class, "end session");
        Visit stored = dictation.store.visit(dictation.session.visit().id()).orElseThrow();
        assertTrue(stored.endedAt().isPresent());
    }

    @Test
    void whenTheStoreFailsNothingIsAnnouncedAndTheStateStays() {
        Visit visit = dictation.session.visit();
        VisitSession failing = Dictation.over(
                visit,
                event -> {
                    throw new JournalException(
                            "The disk is full. Make room and say it again.", new java.io.IOException());
                },
                ClinicSettings.defaults(),
                new Context(java.util.Optional.of(org.arcsay.model.Side.LEFT), Mode.ACTIVE));
        var words = List.of("i", "p", "flexion", "sixty");
        Outcome outcome = failing.handle(
                new org.arcsay.parser.Parser(org.arcsay.grammar.SpokenGrammar.standard())
                        .understand(org.arcsay.model.Utterance.typed(words)),
                Heard.typed("", Dictation.VERSIONS));
        var refused = assertInstanceOf(Outcome.Refused.class, outcome);
        assertEquals(Why.NOT_STORED, refused.why());
        assertTrue(refused.sentence().contains("disk is full"));
        assertEquals(List.of(), failing.visit().entries());
    }

    @ParameterizedTest
    @CsvSource({"left hand,i p flexion forty", "other hand,i p flexion forty", "where am i,left i p flexion forty"})
    void whatIsSaidOfTheOtherHandIsNoAnswerAndReplacesNothing(String first, String second) throws Exception {
        dictation.say("right hand");
        say(Outcome.Asked.class, "i p flexion ninety nine");
        dictation.say(first);
        dictation.say(second);
        assertEquals(
                List.of("right IP flexion, active: 99 degrees", "left IP flexion, active: 40 degrees"),
                dictation.stored());
        assertEquals(
                EntryStatus.UNCONFIRMED,
                dictation.session.visit().entry(1).orElseThrow().status());
    }

    /** The answer comes after the hand was changed: the reading was of the hand before. */
    @ParameterizedTest
    @ValueSource(strings = {"left hand", "other hand"})
    void aReadingThatWaitsForItsDirectionStaysWithItsHand(String change) throws Exception {
        dictation.say("right hand");
        asked(Question.WhichKind.class, "m p extension ten");
        assertEquals(Why.NOT_UNDERSTOOD, refused(change));
        say(Outcome.Asked.class, "hyperextension");
        assertEquals(
                EntryStatus.HELD,
                dictation.session.visit().entry(1).orElseThrow().status());
        dictation.say("yes");
        dictation.say(change);
        dictation.say("m p flexion sixty");
        assertEquals(
                List.of("right MP extension, active: hyperextends 10 degrees", "left MP flexion, active: 60 degrees"),
                dictation.stored());
    }

    @ParameterizedTest
    @ValueSource(strings = {"left hand", "other hand", "passive"})
    void aNumberAfterHandOrModeWasChangedIsNoAnswer(String change) throws Exception {
        dictation.say("right hand");
        say(Outcome.Asked.class, "i p flexion ninety nine");
        dictation.say(change);
        assertEquals(Why.NO_JOINT, refused("forty"));
        assertEquals(List.of("right IP flexion, active: 99 degrees"), dictation.stored());
    }
}
