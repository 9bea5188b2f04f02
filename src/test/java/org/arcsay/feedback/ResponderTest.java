package org.arcsay.feedback;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.List;
import org.arcsay.model.ClinicSettings;
import org.arcsay.model.Utterance;
import org.arcsay.session.Dictation;
import org.arcsay.session.Outcome;
import org.arcsay.store.StoreException;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Answers to what a real session makes of dictated words. */
class ResponderTest {
    private static final String TALK = "so how was your weekend did you do the exercises every day like we said";

    @TempDir
    private Path folder;

    private Dictation dictation;
    private final Responder responder = new Responder(FeedbackLevel.SHORT);

    @BeforeEach
    void open() throws StoreException {
        dictation = new Dictation(folder, ClinicSettings.defaults());
        say("right hand");
        say("i p flexion seventy");
    }

    @AfterEach
    void close() throws StoreException {
        dictation.close();
    }

    @Test
    void refusalsEscalateAndThenFallSilent() {
        assertEquals("REFUSED", say("banana split"));
        assertEquals("REFUSED not understood", say("banana split"));
        assertEquals("PAUSED nothing saved, ready when you are", say("banana split"));
        for (int i = 0; i < 10; i++) {
            assertEquals("", say("banana split"));
        }
        assertTrue(responder.quiet());
        assertEquals("SAVED m p flexion, five zero", say("m p flexion fifty"));
        assertFalse(responder.quiet());
        assertEquals("REFUSED", say("banana split"));
    }

    @Test
    void whatWasLostUnderAnAnswerIsToldWithTheAnswerAgainAndNotForEver() {
        say("m p flexion fifty");
        for (int i = 0; i < 3; i++) {
            assertEquals(
                    "not understood, m p flexion, five zero",
                    responder.lost().sentence().text());
        }
        assertTrue(responder.lost().isSilent());
        say("m p hyperextension ten");
        assertEquals(
                "not understood, m p hyperextension, one zero",
                responder.lost().sentence().text());
    }

    @Test
    void longTalkIsAnsweredOnceAndThenNotAtAll() {
        assertEquals("PAUSED nothing saved, ready when you are", say(TALK));
        assertEquals("", say(TALK));
        assertEquals("", say("and does it hurt"));
    }

    @Test
    void threeFailedAnswersLeaveTheReadingForTheReview() throws StoreException {
        String question = say("palmar abduction ninety");
        assertTrue(question.startsWith("DOUBTFUL palmar abduction, nine zero, "), question);
        String again = say("banana split");
        assertTrue(again.startsWith("REFUSED or, one nine") || again.startsWith("REFUSED unusual value"), again);
        assertEquals("REFUSED", say("banana split"));
        assertEquals("PAUSED marked for review", say("banana split"));
        assertEquals("SAVED m p flexion, five zero", say("m p flexion fifty"));
        assertTrue(dictation.stored().contains("right CMC palmar abduction, active: 90 degrees"));
    }

    @Test
    void afterAnUnclearHandTheReadingIsReadBackWithHandAndMode() {
        say("left hand", List.of(new Utterance.Rival("[unk]", 0.4)));
        assertEquals("DOUBTFUL right, active, m p flexion, six one, please confirm", say("m p flexion sixty one"));
        assertEquals("SAVED m p flexion, six one", say("yes"));
    }

    @Test
    void whereTheNumberIsUnclearTooTheHandIsSaidWithIt() {
        say("left hand", List.of(new Utterance.Rival("[unk]", 0.4)));
        assertEquals(
                "DOUBTFUL right, active, m p flexion, one seven, or, seven zero, please confirm",
                say("m p flexion seventeen", List.of(new Utterance.Rival("m p flexion seventy", 0.4))));
        say("yes");
        assertEquals("SAVED m p hyperextension, one zero", say("m p hyperextension ten"));
    }

    @Test
    void whatWasHeardUnsurelyIsReadBackAndAskedAbout() {
        assertEquals(
                "DOUBTFUL m p flexion, one seven, or, seven zero, please confirm",
                say("m p flexion seventeen", List.of(new Utterance.Rival("m p flexion seventy", 0.4))));
        assertEquals(
                "DOUBTFUL m p flexion, one eight, please confirm",
                say("m p flexion eighteen", List.of(new Utterance.Rival("[unk] eighteen", 0.5))));
    }

    @Test
    void saysAgainWhatItSaidLast() {
        assertEquals("SAVED m p flexion, five zero", say("m p flexion fifty"));
        assertEquals("SAVED m p flexion, five zero", say("say again"));
    }

    @Test
    void takesBackAndSaysWhat() {
        assertEquals("UNDONE removed, i p flexion, seven zero", say("disregard that"));
        assertEquals("REFUSED no reading yet", say("disregard that"));
    }

    @Test
    void aCorrectionTakenBackSaysWhatIsInForceAgain() {
        assertEquals("SAVED corrected, i p flexion, six zero", say("correction sixty"));
        assertEquals("UNDONE removed, i p flexion, six zero, back to, i p flexion, seven zero", say("disregard that"));
    }

    @Test
    void pausedMeetsEverythingElseWithSilence() {
        assertEquals("PAUSED paused", say("stand by"));
        assertEquals("", say("i p flexion fifty"));
        assertEquals("LISTENING listening", say("go ahead"));
    }

    @Test
    void asksForWhatIsLacking() {
        assertEquals("DOUBTFUL hyperextension, or deficit", say("m p extension ten"));
        assertEquals("SAVED m p lacks, one zero", say("deficit"));
        assertEquals("DOUBTFUL m p flexion, which value", say("m p flexion"));
        assertEquals("SAVED m p flexion, five five", say("fifty five"));
    }

    @Test
    void tellsWhereItIs() {
        assertTrue(say("what is missing").trim().startsWith("still missing, "), "what is missing");
        assertTrue(
                say("where am i").trim().startsWith("right hand, active, i p flexion, seven zero, next"), "where am i");
        assertEquals("i p flexion, seven zero", say("read back").trim());
    }

    private String say(String words) {
        return say(words, List.of());
    }

    private String say(String words, List<Utterance.Rival> rivals) {
        Outcome outcome = dictation.say(words, rivals);
        Answer answer =
                responder.answer(Utterance.typed(List.of(words.split(" "))), outcome, dictation.session.question());
        assertTrue(ClipVoice.builtIn().canSay(answer.sentence()), answer.sentence()::text);
        return (answer.earcon().map(Enum::name).orElse("") + " "
                        + answer.sentence().text())
                .stripTrailing();
    }
}
