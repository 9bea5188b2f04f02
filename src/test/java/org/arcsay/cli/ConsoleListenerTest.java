package org.arcsay.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.PrintWriter;
import java.io.StringWriter;
import java.time.Duration;
import java.util.List;
import org.arcsay.model.Side;
import org.arcsay.model.Utterance;
import org.arcsay.model.Word;
import org.arcsay.parser.Command;
import org.arcsay.session.Context;
import org.arcsay.session.Outcome;
import org.junit.jupiter.api.Test;

final class ConsoleListenerTest {
    private final StringWriter shown = new StringWriter();
    private final ConsoleListener listener = new ConsoleListener(new PrintWriter(shown));

    @Test
    void saysTheLastAnswerAgain() {
        hears("left thumb", new Outcome.ContextSet(Context.START.with(Side.LEFT)));
        hears("go", new Outcome.Refused(Outcome.Why.NOT_UNDERSTOOD, "This was not understood."));
        hears("say again", new Outcome.SayAgain());
        hears("say again", new Outcome.SayAgain());
        assertThat(shown.toString().lines().filter(line -> line.contains("->")))
                .containsExactly(
                        "        -> now: left hand, active",
                        "        -> not saved: This was not understood.",
                        "        -> again: now: left hand, active",
                        "        -> again: now: left hand, active");
    }

    @Test
    void hasNothingToSayAgainAtFirst() {
        hears("say again", new Outcome.SayAgain());
        assertThat(shown.toString().lines()).containsExactly("  0:01  \"say again\"");
    }

    private void hears(String text, Outcome outcome) {
        Duration second = Duration.ofSeconds(1);
        List<Word> words = List.of(new Word(text, second, second, 1));
        listener.answered(new Utterance(words, List.of()), new Command.Control(Command.ControlWord.SAY_AGAIN), outcome);
    }
}
