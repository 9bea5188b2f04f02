package org.arcsay.session;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.List;
import org.arcsay.model.ClinicSettings;
import org.arcsay.model.Entry;
import org.arcsay.model.EntryStatus;
import org.arcsay.model.Mode;
import org.arcsay.model.Utterance.Rival;
import org.arcsay.session.Outcome.Asked;
import org.arcsay.session.Outcome.Corrected;
import org.arcsay.session.Outcome.Refused;
import org.arcsay.session.Outcome.Saved;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Sentences that a pause cuts in two, over a real record. That people pause inside a number: common practice. */
class JoinedSpeechTest {
    private static final int SHORT = 500;
    private static final int LONG = 1500;

    @TempDir
    Path folder;

    private Dictation dictation;

    @BeforeEach
    void begin() throws Exception {
        dictation = new Dictation(folder, ClinicSettings.defaults());
        dictation.say("right hand");
    }

    @AfterEach
    void end() throws Exception {
        dictation.close();
    }

    private List<Entry> entries() {
        return dictation.session.visit().entries();
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "i p flexion seventy | five | right IP flexion, active: 75 degrees",
                "i p flexion | seventy / five | right IP flexion, active: 75 degrees",
                "i p flexion seventy five | degrees | right IP flexion, active: 75 degrees",
                "i p flexion | seventy / five / degrees | right IP flexion, active: 75 degrees",
                "i p ten | extension lag | right IP extension, active: lacks 10 degrees",
                "i p ten | of / hyperextension | right IP extension, active: hyperextends 10 degrees",
                "opposition ring six | millimeters | right opposition to ring tip, active: 6 mm",
                "opposition | base of little finger / two centimeters | right opposition to little base, active: 2 cm",
                "i p flexion not tested | because of pain | right IP flexion, active: not tested: pain",
                "i p flexion seventy five | passive | right IP flexion, passive: 75 degrees",
                "passive | i p flexion seventy / five | right IP flexion, passive: 75 degrees",
            })
    void piecesThatMakeOneSentenceAreTakenAsOne(String first, String more, String stored) throws Exception {
        dictation.say(first);
        for (String piece : more.split(" / ")) {
            dictation.say(SHORT, piece);
        }
        assertThat(dictation.stored()).containsExactly(stored);
        assertThat(dictation.session.question()).isEmpty();
    }

    @Test
    void theFirstPartStaysInTheHistoryAndIsReadBackAsCorrected() {
        assertThat(dictation.say("i p flexion seventy")).isInstanceOf(Saved.class);
        assertThat(dictation.say(SHORT, "five")).isInstanceOf(Corrected.class);
        assertThat(entries())
                .extracting(Entry::status)
                .containsExactly(EntryStatus.SUPERSEDED, EntryStatus.UNCONFIRMED);
        assertThat(entries().get(1).heard().words()).isEqualTo("i p flexion seventy five");
    }

    @Test
    void anArcTakesThePlaceOfItsFirstNumber() throws Exception {
        dictation.say("i p ten");
        dictation.say(SHORT, "to fifty");
        assertThat(dictation.stored()).hasSize(2).last().isEqualTo("right IP flexion, active: 50 degrees");
    }

    @Test
    void severalGapsGoOnToOneSeries() throws Exception {
        dictation.say("opposition index zero");
        dictation.say(SHORT, "long zero");
        dictation.say(SHORT, "ring six millimeters");
        assertThat(dictation.stored())
                .containsExactly(
                        "right opposition to index tip, active: touches, 0 mm",
                        "right opposition to middle tip, active: touches, 0 mm",
                        "right opposition to ring tip, active: 6 mm");
    }

    @Test
    void afterALongerPauseANumberBelongsToNothing() throws Exception {
        dictation.say("i p flexion seventy");
        assertThat(dictation.say(LONG, "five")).isInstanceOf(Refused.class);
        assertThat(dictation.stored()).containsExactly("right IP flexion, active: 70 degrees");
    }

    @Test
    void aLaterChangeOfModeLeavesTheReadingAsItIs() throws Exception {
        dictation.say("i p flexion seventy");
        assertThat(dictation.say(LONG, "passive")).isInstanceOf(Outcome.ContextSet.class);
        assertThat(dictation.stored()).containsExactly("right IP flexion, active: 70 degrees");
        assertThat(dictation.session.context().mode()).isEqualTo(Mode.PASSIVE);
    }

    @Test
    void anotherHandRightAfterAReadingIsForTheNextOne() throws Exception {
        dictation.say("i p flexion seventy");
        assertThat(dictation.say(SHORT, "left hand")).isInstanceOf(Outcome.ContextSet.class);
        assertThat(dictation.stored()).containsExactly("right IP flexion, active: 70 degrees");
    }

    @Test
    void aCorrectionGoesOn() throws Exception {
        dictation.say("i p flexion seventy");
        dictation.say("correction sixty");
        dictation.say(SHORT, "five");
        assertThat(dictation.stored()).containsExactly("right IP flexion, active: 65 degrees");
    }

    @Test
    void noGoesOnWithTheRightNumber() throws Exception {
        dictation.say("i p flexion ninety nine");
        assertThat(dictation.session.question()).isPresent();
        dictation.say("no");
        assertThat(dictation.stored()).isEmpty();
        dictation.say(SHORT, "sixty");
        assertThat(dictation.stored()).containsExactly("right IP flexion, active: 60 degrees");
        dictation.say(SHORT, "five");
        assertThat(dictation.stored()).containsExactly("right IP flexion, active: 65 degrees");
    }

    @Test
    void aRemarkGoesOnWithoutBeingMadeTwice() {
        dictation.say("i p flexion seventy");
        dictation.say("pain at end range");
        dictation.say(SHORT, "four");
        List<Entry> counting = dictation.session.visit().counting();
        assertThat(counting).hasSize(1);
        assertThat(counting.get(0).remarks()).hasSize(1);
    }

    @Test
    void whatIsNotUnderstoodRightAfterAReadingMakesItDoubtful() throws Exception {
        dictation.say("i p flexion seventy");
        Outcome outcome = dictation.say(SHORT, "[unk]");
        assertThat(outcome).isInstanceOf(Asked.class);
        assertThat(dictation.session.visit().counting().get(0).status()).isEqualTo(EntryStatus.HELD);
        assertThat(dictation.say("yes")).isInstanceOf(Outcome.Kept.class);
        assertThat(dictation.stored()).containsExactly("right IP flexion, active: 70 degrees");
    }

    @Test
    void aNumberThatDoesNotFitTheReadingBeforeItMakesItDoubtful() {
        dictation.say("i p extension deficit thirteen");
        assertThat(dictation.say(SHORT, "nine")).isInstanceOf(Asked.class);
        assertThat(dictation.session.visit().counting().get(0).status()).isEqualTo(EntryStatus.HELD);
    }

    /** "Sixty" before a pause can sound like "sixteen": common practice. */
    @Test
    void theWholeThatWasMeantIsOfferedWhereItIsAmongWhatCouldHaveBeenHeard() {
        dictation.say(2000, "i p flexion sixteen", List.of(new Rival("i p flexion sixty", 0.1)));
        assertThat(dictation.say(SHORT, "one")).isInstanceOf(Asked.class);
        Entry entry = dictation.session.visit().counting().get(0);
        assertThat(entry.status()).isEqualTo(EntryStatus.HELD);
        assertThat(entry.findings().get(0).alternative().orElseThrow().words()).contains("61");
    }

    @Test
    void talkAWhileAfterAReadingLeavesItAlone() {
        dictation.say("i p flexion seventy");
        assertThat(dictation.say(1000, "[unk]")).isInstanceOf(Refused.class);
        assertThat(dictation.session.visit().counting().get(0).status()).isEqualTo(EntryStatus.UNCONFIRMED);
    }

    @Test
    void aDoubtInEitherPieceIsADoubtAboutTheWhole() {
        dictation.say("i p flexion seventy");
        Outcome outcome = dictation.say(SHORT, "five", List.of(new Rival("nine", 0.4)));
        assertThat(outcome).isInstanceOf(Asked.class);
        Entry entry = dictation.session.visit().counting().get(0);
        assertThat(entry.status()).isEqualTo(EntryStatus.HELD);
        assertThat(entry.findings().get(0).alternative().orElseThrow().words()).contains("79");
    }

    @Test
    void aPieceThatAddsNothingAddsNoDoubt() {
        dictation.say("i p flexion seventy");
        assertThat(dictation.say(SHORT, "degrees", List.of(new Rival("[unk]", 0.4))))
                .isInstanceOf(Saved.class);
        assertThat(dictation.session.question()).isEmpty();
    }

    @Test
    void nothingGoesOnWhilePaused() throws Exception {
        dictation.say("i p flexion seventy");
        dictation.say("stand by");
        assertThat(dictation.say(SHORT, "five")).isInstanceOf(Outcome.Ignored.class);
        assertThat(dictation.stored()).containsExactly("right IP flexion, active: 70 degrees");
    }

    @Test
    void aNewReadingSoonAfterStandsByItself() throws Exception {
        dictation.say("i p flexion seventy");
        dictation.say(SHORT, "m p flexion fifty");
        dictation.say(SHORT, "five");
        assertThat(dictation.stored())
                .containsExactly("right IP flexion, active: 70 degrees", "right MP flexion, active: 55 degrees");
    }

    @Test
    void takingBackTheWholeBringsNothingOfTheFirstPartBackUnsaid() throws Exception {
        dictation.say("i p flexion seventy");
        dictation.say(SHORT, "five");
        dictation.say("disregard that");
        assertThat(dictation.stored()).isEmpty();
    }
}
