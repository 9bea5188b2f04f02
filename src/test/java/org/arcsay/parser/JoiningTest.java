package org.arcsay.parser;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.arcsay.grammar.SpokenGrammar;
import org.arcsay.model.Utterance;
import org.arcsay.model.Utterance.Rival;
import org.arcsay.model.Word;
import org.arcsay.parser.Joining.Link;
import org.arcsay.parser.Joining.Said;
import org.junit.jupiter.api.Test;

/** Weak words at the edge of silence. The speech models that were tried hear such words there with 0.06 to 0.23. */
class JoiningTest {
    private static final Duration WORD = Duration.ofMillis(300);
    private static final double WEAK = 0.2;

    private final Joining joining = new Joining(new Parser(SpokenGrammar.standard()));
    private Duration clock = Duration.ZERO;

    @Test
    void aWeakWordAloneIsBreath() {
        assertThat(next(0, 0.29, "four")).isEmpty();
        assertThat(next(0, 0.31, "four")).isPresent();
    }

    @Test
    void aWeakWordSoonAfterTheBeginningOfANumberIsTakenWithIt() {
        next(0, 1, "i p flexion seventy");
        Said said = next(400, WEAK, "five").orElseThrow();
        assertThat(said.link()).isEqualTo(Link.WHOLE);
        assertThat(said.utterance().text()).isEqualTo("i p flexion seventy five");
        assertThat(said.meaning().others() + said.meaning().outside()).isGreaterThan(0.2);
    }

    @Test
    void aWeakWordLongAfterOrWithNothingToGoOnWithIsBreathAndJoinsNothingLater() {
        next(0, 1, "i p flexion seventy");
        assertThat(next(1300, WEAK, "five")).isEmpty();
        next(2000, 1, "i p flexion seventy five");
        assertThat(next(400, WEAK, "four")).isEmpty();
        assertThat(next(300, 1, "degrees").orElseThrow().utterance().text())
                .isEqualTo("i p flexion seventy five degrees");
    }

    @Test
    void severalWeakWordsAreNoBreath() {
        assertThat(next(0, WEAK, "seventy five")).isPresent();
    }

    @Test
    void nothingGoesOnWithWhatWasWholeByItself() {
        joining.whole(Utterance.typed(List.of("i", "p", "flexion", "seventy")));
        Said said = next(200, 1, "five").orElseThrow();
        assertThat(said.link()).isEqualTo(Link.NONE);
        assertThat(said.utterance().text()).isEqualTo("five");
    }

    @Test
    void aBeginningThatMeansNothingAloneIsNotLostForTheReadingAfterIt() {
        next(0, 1, "passive thumb");
        Said said = next(500, 1, "m p flexion eighty degrees").orElseThrow();
        assertThat(said.link()).isEqualTo(Link.WHOLE);
        assertThat(said.utterance().text()).isEqualTo("passive thumb m p flexion eighty degrees");
        next(2000, 1, "passive thumb");
        assertThat(next(1300, 1, "m p flexion eighty").orElseThrow().link()).isEqualTo(Link.NONE);
        next(2000, 1, "how does that feel");
        assertThat(next(500, 1, "m p flexion eighty").orElseThrow().link()).isEqualTo(Link.NONE);
    }

    private Optional<Said> next(int pause, double probability, String words) {
        clock = clock.plusMillis(pause);
        List<Word> heard = new ArrayList<>();
        for (String word : words.split(" ")) {
            heard.add(new Word(word, clock, clock.plus(WORD), probability));
            clock = clock.plus(WORD);
        }
        List<Rival> rivals = probability < 1 ? List.of(new Rival("[unk]", 1 - probability)) : List.of();
        return joining.next(new Utterance(heard, rivals));
    }
}
