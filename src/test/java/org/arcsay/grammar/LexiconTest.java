package org.arcsay.grammar;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

final class LexiconTest {
    @Test
    void everyWordOfTheGrammarHasAPronunciation() {
        assertThat(Lexicon.standard().words().keySet())
                .containsAll(SpokenGrammar.standard().words());
    }

    /** British and American, and spelled as letters: common practice. */
    @Test
    void abductionIsSaidInSeveralWays() {
        assertThat(Lexicon.standard().words().get("abduction"))
                .contains(
                        List.of("AE", "B", "D", "AH", "K", "SH", "AH", "N"),
                        List.of("EY", "B", "IY", "D", "AH", "K", "SH", "AH", "N"));
    }

    @Test
    void ownPronunciationsAreAdded() throws GrammarException {
        Lexicon both = Lexicon.parse("lag\tL AE G").with(Lexicon.parse("lag\tL EY G\nsplint\tS P L IH N T"));
        assertThat(both.words().get("lag")).containsExactly(List.of("L", "AE", "G"), List.of("L", "EY", "G"));
        assertThat(both.words()).containsKey("splint");
    }

    /** Pronunciations from the CMU Pronouncing Dictionary: eight and ate, y and why share one, why and to have more. */
    @Test
    void aTextIsCoveredByWhatIsSaidInAllItsWays() {
        assertThat(covers("forty ate", "forty eight")).isTrue();
        assertThat(covers("forty eight", "forty ate")).isTrue();
        assertThat(covers("eighty why", "eighty y")).isTrue();
        assertThat(covers("eighty y", "eighty why")).isFalse();
        assertThat(covers("forty to", "forty two")).isTrue();
        assertThat(covers("forty two", "forty to")).isFalse();
        assertThat(covers("forty eight", "forty eighty")).isFalse();
        assertThat(covers("forty eight", "forty")).isFalse();
        assertThat(covers("not-in-it", "not-in-it")).isTrue();
        assertThat(covers("forty", "not-in-it")).isFalse();
    }

    private static boolean covers(String other, String text) {
        return Lexicon.standard().covers(List.of(other.split(" ")), List.of(text.split(" ")));
    }

    @Test
    void textIsReadBackTheSame() throws GrammarException {
        assertThat(Lexicon.parse(Lexicon.standard().text())).isEqualTo(Lexicon.standard());
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = ';',
            value = {
                "splint S P L;needs a word",
                "Splint\tS P L;needs a word",
                "splint\t;empty pronunciation",
                "splint\tS P L IH N T |;empty pronunciation",
                "splint\tS P1;'P1' is not one of the phones",
                "a\tAH\\na\tEY;has a line already",
            },
            ignoreLeadingAndTrailingWhitespace = false)
    void aSpoiledLineIsNamed(String text, String message) {
        String lines = "# own words\n" + text.replace("\\n", "\n");
        assertThatThrownBy(() -> Lexicon.parse(lines))
                .isInstanceOf(GrammarException.class)
                .hasMessageContaining(lines.endsWith("a\tEY") ? "line 3" : "line 2")
                .hasMessageContaining(message);
    }

    @Test
    void aFileThatIsNotThereOrNoTextIsNamed(@TempDir Path folder) throws Exception {
        Path file = folder.resolve("own.txt");
        assertThatThrownBy(() -> Lexicon.read(file)).hasMessageContaining("own.txt");
        Files.write(file, new byte[] {(byte) 0xff, (byte) 0xfe, 0});
        assertThatThrownBy(() -> Lexicon.read(file)).hasMessageContaining("not a UTF-8 text file");
    }

    @Test
    void hasThe39PhonesOfItsSource() {
        assertThat(Lexicon.PHONES).hasSize(39).containsAll(Set.of("AA", "ZH", "NG"));
    }
}
