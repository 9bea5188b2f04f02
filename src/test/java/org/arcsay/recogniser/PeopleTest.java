package org.arcsay.recogniser;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import org.arcsay.grammar.Lexicon;
import org.arcsay.grammar.SpokenGrammar;
import org.arcsay.model.Utterance;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * Single digits of people whom the model never heard. The limits are our own, set after the first run.
 *
 * <p>Sources: Free Spoken Digit Dataset, Z. Jackson and contributors, speakers theo and nicolas, CC BY-SA 4.0; Speech Commands
 * v0.02, P. Warden, its official test part, CC BY 4.0.
 */
final class PeopleTest {
    private static final Path TWO_PEOPLE = Path.of("src/test/resources/people");
    private static final Path FIFTY_PEOPLE = Path.of("src/test/resources/crowd");

    private static final List<String> WORDS =
            List.of("zero", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine");

    private static final String DIGITS =
            "#JSGF V1.0; grammar digits; public <digit> = " + String.join(" | ", WORDS) + ";";

    @TempDir
    static Path cache;

    @Test
    void hearsMostDigitsOfTwoPeopleAndTakesHardlyAnyForAnother() throws Exception {
        assertMisheard(TWO_PEOPLE, 1, 4);
    }

    @Test
    void hearsMostDigitsOfFiftyPeopleAndTakesHardlyAnyForAnother() throws Exception {
        assertMisheard(FIFTY_PEOPLE, 2, 6);
    }

    private static void assertMisheard(Path folder, int mostTakenForAnother, int mostMisheard) throws Exception {
        ModelCache models = new ModelCache(cache);
        ModelFolder fitted = models.fit(
                        models.bundled(), SpokenGrammar.parse(DIGITS).graph(), Lexicon.EMPTY, SentencePause.LONG)
                .folder();
        List<String> wrongDigits = new ArrayList<>();
        List<String> notHeard = new ArrayList<>();
        try (VoskModel model = VoskModel.load(fitted.path());
                Recogniser recogniser = model.recogniser(16_000)) {
            for (Recordings.Clip clip : Recordings.clips(folder)) {
                String heard = Recordings.hear(recogniser, clip.wav()).stream()
                        .map(Utterance::text)
                        .collect(Collectors.joining(" "));
                if (!heard.equals(clip.words())) {
                    boolean isDigits = WORDS.containsAll(List.of(heard.split(" ")));
                    (isDigits ? wrongDigits : notHeard).add(clip.wav().getFileName() + " -> " + heard);
                }
            }
        }
        assertThat(wrongDigits).as("taken for other digits").hasSizeLessThanOrEqualTo(mostTakenForAnother);
        assertThat(notHeard)
                .as("not heard, beside %s taken for other digits", wrongDigits)
                .hasSizeLessThanOrEqualTo(mostMisheard - wrongDigits.size());
    }
}
