package org.arcsay.review;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.arcsay.analysis.Completeness;
import org.arcsay.grammar.SpokenGrammar;
import org.arcsay.model.Side;
import org.arcsay.parser.Command;
import org.arcsay.parser.Parser;
import org.arcsay.review.MeasuringState.Loudness;
import org.arcsay.session.Outcome;
import org.arcsay.session.Question;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

class MeasuringModelTest {
    private final MeasuringScript script = new MeasuringScript();
    private final MeasuringModel model = script.model();

    @ParameterizedTest
    @EnumSource(Control.class)
    void everyControlSaysAPhraseOfTheGrammar(Control control) {
        Command command = new Parser(SpokenGrammar.standard())
                .parse(List.of(control.words().split(" ")));
        assertFalse(command instanceof Command.Rejected, control + " is " + command);
    }

    @Test
    void theStateFollowsTheSession() {
        script.say("right hand");
        script.say("i p flexion seventy five");
        MeasuringState state = model.state();
        assertEquals(Optional.of(Side.RIGHT), state.context().side());
        assertEquals(
                "right IP flexion, active: 75 degrees",
                state.last().orElseThrow().reading().words());
        assertEquals(
                "right IP extension, active", state.expected().orElseThrow().words());
        assertInstanceOf(Outcome.Saved.class, state.outcome().orElseThrow());
        assertEquals("i p flexion seventy five", state.heard());
        assertEquals(1, state.series().orElseThrow().done().size());
        assertEquals(Listening.LISTENING, state.listening());
    }

    @Test
    void anUnusualReadingShowsItsQuestionAndAnswers() {
        script.untilDoubt();
        Question question = model.state().question().orElseThrow();
        assertEquals(List.of(Control.YES, Control.NO), Control.answers(question));
        model.say(Control.YES.words());
        assertEquals(Optional.empty(), model.state().question());
    }

    @Test
    void whatIsLeftOutIsShownApartFromWhatIsMissing() {
        script.untilDoubt();
        List<Completeness.State> states = model.state().series().orElseThrow().items().stream()
                .map(Completeness.Item::state)
                .toList();
        assertEquals(Completeness.State.NOT_TESTED, states.get(4));
        assertTrue(states.contains(Completeness.State.MISSING));
    }

    @Test
    void pausedOnlyResumingIsOffered() {
        script.untilDoubt();
        script.say("affirm");
        model.say("stand by");
        assertEquals(Listening.PAUSED, model.state().listening());
        assertEquals(List.of(Control.GO_AHEAD), Control.offered(model.state()));
        MeasuringState paused = model.state();
        model.say("i p flexion twenty");
        assertEquals(paused, model.state(), "talk while paused changes nothing");
        model.say("go ahead");
        assertEquals(Listening.LISTENING, model.state().listening());
    }

    @Test
    void undoAndSkippingAreOfferedWhenThereIsSomethingForThem() {
        assertFalse(Control.offered(model.state()).contains(Control.UNDO));
        assertFalse(Control.offered(model.state()).contains(Control.SKIP_PAIN));
        script.say("right hand");
        script.say("i p flexion seventy five");
        List<Control> offered = Control.offered(model.state());
        assertTrue(offered.containsAll(List.of(Control.UNDO, Control.SKIP_PAIN, Control.LEFT, Control.PASSIVE)));
        assertFalse(offered.contains(Control.RIGHT));
        model.say(Control.UNDO.words());
        assertEquals(Optional.empty(), model.state().last());
        model.say(Control.END.words());
        assertEquals(List.of(), Control.offered(model.state()));
    }

    @Test
    void everyControlThatVoiceHasCanBeReachedInSomeState() {
        List<Control> reached = new ArrayList<>(Control.offered(model.state()));
        script.say("right hand");
        reached.addAll(Control.offered(model.state()));
        script.say("i p flexion seventy five");
        reached.addAll(Control.offered(model.state()));
        script.say("passive");
        reached.addAll(Control.offered(model.state()));
        script.say("stand by");
        reached.addAll(Control.offered(model.state()));
        reached.addAll(List.of(
                Control.YES,
                Control.NO,
                Control.SECOND_TRIAL,
                Control.REPLACE,
                Control.HYPEREXTENSION,
                Control.DEFICIT));
        for (Control control : Control.values()) {
            assertTrue(reached.contains(control), control + " is never offered");
        }
    }

    @Test
    void lettersForAltAreDistinctWhereTheyAreShownTogether() {
        for (Question question : questions()) {
            List<Control> together = new ArrayList<>(Control.answers(question));
            List.of(Control.STAND_BY, Control.UNDO, Control.END).forEach(together::add);
            List<Character> letters = together.stream()
                    .filter(control -> control.label().contains("_"))
                    .map(control -> control.label().charAt(control.label().indexOf('_') + 1))
                    .map(Character::toLowerCase)
                    .toList();
            List<Character> all = new ArrayList<>(letters);
            all.addAll(List.of('h', 'a', 'k', 't', 'x'));
            assertEquals(all.size(), all.stream().distinct().count(), "" + all);
        }
    }

    @Test
    void loudnessIsEvenInDecibels() {
        assertEquals(1, Loudness.ofRms(1, false).share(), 1e-9);
        assertEquals(0.5, Loudness.ofRms(Math.pow(10, -30 / 20.0), false).share(), 1e-9);
        assertEquals(0, Loudness.ofRms(0, false).share(), 0);
        assertEquals("too loud, move away a little", Loudness.ofRms(0.9, true).words());
        assertThrows(IllegalArgumentException.class, () -> new Loudness(Double.NaN, false));
    }

    @Test
    void theMicrophoneCanSpeakUp() {
        model.update(state -> state.with(Listening.NO_SIGNAL, "The microphone delivers no signal."));
        assertEquals("The microphone delivers no signal.", model.state().notice());
        assertFalse(model.state().listening().open());
        model.update(state -> state.with(new Loudness(0.5, false)));
        assertNotEquals(Loudness.SILENT, model.state().level());
    }

    @Test
    void blankTypingDoesNothing() {
        MeasuringState before = model.state();
        model.say("  ");
        assertEquals(before, model.state());
    }

    private List<Question> questions() {
        List<Question> questions = new ArrayList<>();
        for (List<String> words : List.of(
                List.of("i p flexion seventy five"),
                List.of("right hand", "i p extension ten"),
                List.of("right hand", "palmar abduction one hundred"))) {
            MeasuringScript fresh = new MeasuringScript();
            words.forEach(fresh::say);
            questions.add(fresh.model().state().question().orElseThrow(() -> new AssertionError(words)));
        }
        return questions;
    }
}
