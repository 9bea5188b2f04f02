package org.arcsay.session;

import static org.assertj.core.api.Assertions.assertThat;

import java.math.BigDecimal;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.arcsay.model.ClinicSettings;
import org.arcsay.model.EntryStatus;
import org.arcsay.model.Finding;
import org.arcsay.model.Severity;
import org.arcsay.model.Utterance.Rival;
import org.arcsay.model.Value;
import org.arcsay.session.Outcome.Asked;
import org.arcsay.session.Outcome.Refused;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What is done with sound that could mean two things. Sixteen and sixty are confused when spoken: common practice. */
class HearingDoubtTest {
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

    @Test
    void aReadingThatCouldBeAnotherNumberIsHeldAndTheOtherOffered() {
        Outcome outcome = doubt("i p flexion sixteen", "i p flexion sixty", 0.4);
        assertThat(outcome).isInstanceOf(Asked.class);
        Asked asked = (Asked) outcome;
        assertThat(asked.stored()).hasSize(1);
        assertThat(asked.stored().get(0).status()).isEqualTo(EntryStatus.HELD);
        Finding finding = asked.stored().get(0).findings().get(0);
        assertThat(finding.rule()).isEqualTo("hearing.doubtful");
        assertThat(finding.severity()).isEqualTo(Severity.HOLD);
        assertThat(finding.alternative()).isEqualTo(Optional.of(new Value.Angle(BigDecimal.valueOf(60))));
        assertThat(finding.sentence()).contains("16").contains("60");
    }

    @Test
    void yesReleasesIt() throws Exception {
        doubt("i p flexion sixteen", "i p flexion sixty", 0.4);
        assertThat(dictation.say("yes")).isInstanceOf(Outcome.Kept.class);
        assertThat(dictation.stored()).containsExactly("right IP flexion, active: 16 degrees");
    }

    @Test
    void theWholeReadingReplacesIt() throws Exception {
        doubt("i p flexion sixteen", "i p flexion sixty", 0.4);
        assertThat(dictation.say("i p flexion sixty")).isInstanceOf(Outcome.Corrected.class);
        assertThat(dictation.stored()).containsExactly("right IP flexion, active: 60 degrees");
    }

    @Test
    void anUnlikelyRivalIsNoDoubt() {
        assertThat(doubt("i p flexion fifty", "i p flexion fifteen", 0.05)).isInstanceOf(Outcome.Saved.class);
    }

    @Test
    void otherWordsOfTheSameMeaningAreNoDoubt() {
        assertThat(doubt("i p flexion fifty degrees", "i p flexion fifty degree", 0.45))
                .isInstanceOf(Outcome.Saved.class);
    }

    @Test
    void anotherJointOrSoundOutsideTheGrammarIsADoubtWithoutAnOffer() {
        for (String rival : List.of("m p flexion fifty", "[unk] flexion fifty")) {
            Asked asked = (Asked) doubt("i p flexion fifty", rival, 0.45);
            assertThat(asked.stored().get(0).findings().get(0).alternative()).isEmpty();
            dictation.say("no");
        }
    }

    @Test
    void aDoubtfulCommandThatChangesSomethingIsNotCarriedOut() throws Exception {
        dictation.say("i p flexion fifty");
        for (String command : List.of("disregard that", "other hand", "passive", "pain at end range")) {
            assertThat(doubt(command, "[unk]", 0.3)).as(command).isInstanceOf(Refused.class);
        }
        assertThat(dictation.stored()).containsExactly("right IP flexion, active: 50 degrees");
        assertThat(dictation.session.context().side().orElseThrow().word()).isEqualTo("right");
    }

    @Test
    void aDoubtfulCorrectionIsHeldAsWell() throws Exception {
        dictation.say("i p flexion fifty");
        Asked asked = (Asked) doubt("correction sixteen", "correction sixty", 0.4);
        assertThat(asked.stored().get(0).findings().get(0).alternative())
                .isEqualTo(Optional.of(new Value.Angle(BigDecimal.valueOf(60))));
    }

    @Test
    void aDoubtfulReadingOfAnUnnamedHandIsAskedForAnew(@TempDir Path other) throws Exception {
        try (Dictation fresh = new Dictation(other, ClinicSettings.defaults())) {
            Outcome outcome = fresh.say("i p flexion sixteen", List.of(new Rival("i p flexion sixty", 0.4)));
            assertThat(outcome).isInstanceOf(Refused.class);
            assertThat(fresh.session.question()).isEmpty();
            assertThat(fresh.stored()).isEmpty();
        }
    }

    @Test
    void threeUnclearAnswersLeaveItForTheReview() {
        doubt("i p flexion sixteen", "i p flexion sixty", 0.4);
        doubt("yes", "[unk]", 0.4);
        doubt("yes", "[unk]", 0.4);
        Refused last = (Refused) doubt("yes", "[unk]", 0.4);
        assertThat(last.sentence()).contains("review");
        assertThat(dictation.session.question()).isEmpty();
    }

    /** Limits are our own, measured: docs/decisions/0019-heard-twice.md. */
    @Test
    void inLoudNoiseOnlyACertainReadingIsNotAskedAbout() throws Exception {
        List<Rival> tiny = List.of(new Rival("i p flexion fifteen", 0.006));
        assertThat(dictation.sayAbove(5, "m p flexion forty", List.of())).isInstanceOf(Outcome.Saved.class);
        Asked asked = (Asked) dictation.sayAbove(5, "i p flexion fifty", tiny);
        assertThat(asked.stored().get(0).status()).isEqualTo(EntryStatus.HELD);
        assertThat(asked.stored().get(0).findings().get(0).sentence())
                .isEqualTo("right IP flexion, active: 50 degrees was spoken into noise; say yes if it is right,"
                        + " or say it again.");
        assertThat(dictation.sayAbove(5, "yes", List.of())).isInstanceOf(Outcome.Kept.class);
        assertThat(dictation.stored())
                .containsExactly("right MP flexion, active: 40 degrees", "right IP flexion, active: 50 degrees");
    }

    /** Three decibels are half the power (by definition), so half the share is a doubt. */
    @Test
    void whatIsAllowedFallsWithThePowerOfTheSpeech() {
        for (double decibels : List.of(6.0, 9.0, 12.0, 15.0)) {
            double allowed = 0.0016 * Math.pow(10, decibels / 10);
            assertThat(dictation.sayAbove(decibels, "i p flexion fifty", fifteen(0.95 * allowed)))
                    .isInstanceOf(Outcome.Saved.class);
            dictation.say("disregard that");
            assertThat(dictation.sayAbove(decibels - 3, "i p flexion fifty", fifteen(0.55 * allowed)))
                    .isInstanceOf(Asked.class);
            dictation.say("no");
        }
    }

    private static List<Rival> fifteen(double probability) {
        return List.of(new Rival("i p flexion fifteen", probability));
    }

    @Test
    void soundThatMayBeNoSentenceCountsAQuarter() {
        List<Rival> talk = List.of(new Rival("i p flexion [unk]", 0.19));
        assertThat(dictation.sayAbove(15, "i p flexion fifty", talk)).isInstanceOf(Outcome.Saved.class);
        dictation.say("disregard that");
        assertThat(dictation.sayAbove(14, "i p flexion fifty", talk)).isInstanceOf(Asked.class);
    }

    @Test
    void severalUnlikelyReadingsTogetherAreADoubt() {
        List<Rival> two = List.of(new Rival("i p flexion fifteen", 0.1), new Rival("i p flexion sixty", 0.06));
        assertThat(dictation.say("i p flexion fifty", two)).isInstanceOf(Asked.class);
    }

    @Test
    void aCommandInNoiseIsCarriedOut() {
        dictation.sayAbove(5, "other hand", List.of());
        assertThat(dictation.session.context().side().orElseThrow().word()).isEqualTo("left");
    }

    /** Heard so in talk: words of somebody else. */
    @Test
    void inLoudTalkAnUnsureCommandIsNotCarriedOut() throws Exception {
        dictation.say("i p flexion fifty");
        for (String command : List.of("other hand", "left thumb", "passive", "disregard that", "end session")) {
            assertThat(dictation.sayAbove(7, command, List.of(new Rival("[unk]", 0.2))))
                    .as(command)
                    .isInstanceOf(Refused.class);
        }
        assertThat(dictation.sayAbove(7, "where am i", List.of(new Rival("[unk]", 0.2))))
                .isInstanceOf(Outcome.Position.class);
        assertThat(dictation.session.context().side().orElseThrow().word()).isEqualTo("right");
        assertThat(dictation.stored()).containsExactly("right IP flexion, active: 50 degrees");
        assertThat(dictation.sayAbove(20, "other hand", List.of(new Rival("[unk]", 0.2))))
                .isInstanceOf(Outcome.ContextSet.class);
    }

    @Test
    void aCommandMayHaveThreeTimesTheShareOfAReading() {
        double share = 0.0016 * Math.pow(10, 0.7);
        assertThat(dictation.sayAbove(7, "i p flexion fifty", fifteen(1.1 * share)))
                .isInstanceOf(Asked.class);
        dictation.say("yes");
        assertThat(dictation.sayAbove(7, "passive", List.of(new Rival("active", 2.9 * share))))
                .isInstanceOf(Outcome.ContextSet.class);
        assertThat(dictation.sayAbove(7, "active", List.of(new Rival("passive", 3.1 * share))))
                .isInstanceOf(Refused.class);
    }

    @Test
    void aJoinedReadingIsAsLoudAsItsFaintestPiece() {
        dictation.sayAbove(5, 2000, "i p flexion", List.of());
        assertThat(dictation.sayAbove(30, 300, "fifty", List.of(new Rival("fifteen", 0.02))))
                .isInstanceOf(Asked.class);
    }

    /** Seen in a capture with four voices talking beside it at 7 dB. */
    @Test
    void afterAnUnclearChangeOfHandReadingsAreHeldUntilTheHandIsNamed() throws Exception {
        doubt("left hand", "[unk]", 0.3);
        Asked asked = (Asked) dictation.say("m p flexion sixty one");
        assertThat(asked.question().sentence())
                .isEqualTo(
                        "Before right MP flexion, active: 61 degrees, left hand may have been said, but not clearly; say"
                                + " yes if the reading is right, or correction left hand.");
        assertThat(asked.stored().get(0).status()).isEqualTo(EntryStatus.HELD);
        assertThat(dictation.say("i p flexion fifty")).isInstanceOf(Asked.class);
        dictation.say("left hand");
        assertThat(dictation.say("i p flexion forty")).isInstanceOf(Outcome.Saved.class);
        assertThat(dictation.stored())
                .containsExactly(
                        "right MP flexion, active: 61 degrees",
                        "right IP flexion, active: 50 degrees",
                        "left IP flexion, active: 40 degrees");
    }

    @Test
    void yesToAReadingAfterAnUnclearHandSettlesIt() {
        doubt("other hand", "[unk]", 0.3);
        dictation.say("m p flexion sixty one");
        assertThat(dictation.say("yes")).isInstanceOf(Outcome.Kept.class);
        assertThat(dictation.say("i p flexion fifty")).isInstanceOf(Outcome.Saved.class);
    }

    @Test
    void theCorrectionThatIsOfferedMovesTheReadingAndSettlesIt() throws Exception {
        doubt("left thumb passive", "[unk]", 0.3);
        Asked asked = (Asked) dictation.say("m p flexion sixty one");
        assertThat(asked.question().sentence()).contains("left hand and passive may have been said");
        Asked again = (Asked) dictation.say("correction left hand");
        assertThat(again.question().sentence()).contains("or correction passive.");
        assertThat(dictation.say("correction passive")).isInstanceOf(Outcome.Corrected.class);
        assertThat(dictation.say("i p flexion fifty")).isInstanceOf(Outcome.Saved.class);
        assertThat(dictation.stored())
                .containsExactly("left MP flexion, passive: 61 degrees", "left IP flexion, passive: 50 degrees");
    }

    @Test
    void theReadingRepeatedWithoutTheHandIsNoAnswerAndWithItIsOne() throws Exception {
        doubt("left hand", "[unk]", 0.3);
        dictation.say("m p flexion sixty one");
        assertThat(dictation.say("m p flexion sixty one")).isInstanceOf(Refused.class);
        assertThat(dictation.say("right m p flexion sixty one")).isInstanceOf(Outcome.Kept.class);
        assertThat(dictation.say("i p flexion fifty")).isInstanceOf(Outcome.Saved.class);
        assertThat(dictation.stored())
                .containsExactly("right MP flexion, active: 61 degrees", "right IP flexion, active: 50 degrees");
    }

    @Test
    void soundThatIsRatherNoWordMayHaveNamedAHandToo() {
        doubt("[unk]", "left hand", 0.1);
        assertThat(dictation.say("i p flexion fifty")).isInstanceOf(Outcome.Saved.class);
        doubt("[unk]", "left hand", 0.3);
        assertThat(dictation.say("m p flexion sixty one")).isInstanceOf(Asked.class);
    }

    @Test
    void aCorrectionOfTheReadingBeforeDoesNotSettleTheHand() {
        dictation.say("i p flexion fifty");
        doubt("left hand", "[unk]", 0.3);
        Asked asked = (Asked) dictation.say("correction i p flexion sixty");
        assertThat(asked.question().sentence()).contains("left hand may have been said");
        assertThat(dictation.say("m p flexion sixty one")).isInstanceOf(Asked.class);
    }

    @Test
    void theOtherHandDoesNotSettleAnUnclearMode() {
        doubt("passive", "[unk]", 0.3);
        dictation.say("other hand");
        Asked asked = (Asked) dictation.say("m p flexion sixty one");
        assertThat(asked.question().sentence()).contains("passive may have been said");
    }

    @Test
    void anUnclearNamingOfTheHandThatHoldsDoubtsNothing() {
        doubt("right thumb", "[unk]", 0.3);
        assertThat(dictation.say("m p flexion sixty one")).isInstanceOf(Outcome.Saved.class);
    }

    @Test
    void whatIsLeftOutAfterAnUnclearHandIsHeldAsWell() {
        doubt("left hand", "[unk]", 0.3);
        Asked asked = (Asked) dictation.say("skip that because of splint");
        assertThat(asked.stored().get(0).status()).isEqualTo(EntryStatus.HELD);
    }

    private Outcome doubt(String words, String rival, double probability) {
        return dictation.say(words, List.of(new Rival(rival, probability)));
    }
}
