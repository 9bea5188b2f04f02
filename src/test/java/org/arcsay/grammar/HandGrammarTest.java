package org.arcsay.grammar;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.arcsay.model.HelpCard;
import org.arcsay.model.Site;
import org.arcsay.model.Sites;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** The second grammar, and the imports that it is made of. */
class HandGrammarTest {
    private static final SpokenGrammar HAND = SpokenGrammar.hand();
    private static final SpokenGrammar THUMB = SpokenGrammar.standard();

    @TempDir
    private Path folder;

    @Test
    void noSentenceOfTheWholeLanguageHasTwoMeanings() {
        assertEquals(List.of(), HAND.ambiguities(20));
    }

    @Test
    void everythingThatCanBeSaidOfTheThumbMeansTheSame() {
        RandomSentences sentences = new RandomSentences(THUMB.graph(), 20261125);
        for (int i = 0; i < 5_000; i++) {
            List<String> words = sentences.next();
            assertEquals(THUMB.meanings(words), HAND.meanings(words), words::toString);
        }
    }

    @Test
    void everySentenceOfARandomSampleHasOneMeaningThatCanBeSpelledBackAndASiteOfTheTable() {
        RandomSentences sentences = new RandomSentences(HAND.graph(), 7);
        Set<String> sites = new HashSet<>();
        for (int i = 0; i < 10_000; i++) {
            List<String> words = sentences.next();
            Set<List<Tag>> meanings = HAND.meanings(words);
            assertEquals(1, meanings.size(), () -> words + " means " + meanings);
            List<Tag> meaning = meanings.iterator().next();
            assertEquals(Set.of(meaning), HAND.meanings(HAND.spell(meaning).orElseThrow()), words::toString);
            meaning.stream()
                    .filter(tag -> tag.key().equals("site"))
                    .map(Tag::value)
                    .forEach(sites::add);
        }
        for (Sites.Info info : Sites.standard().all()) {
            assertTrue(sites.contains(info.site().code()), () -> info + " was not said");
        }
        sites.forEach(site -> assertTrue(Sites.standard().knows(new Site(site)), site));
    }

    @Test
    void theUsualGrammarKnowsNoFingerJointAndNoWrist() {
        assertTrue(HAND.words().containsAll(THUMB.words()));
        for (String word : List.of("wrist", "deviation", "ulnar", "d", "proximal")) {
            assertTrue(HAND.words().contains(word), word);
            assertFalse(THUMB.words().contains(word), word);
        }
        assertEquals(Set.of(), THUMB.meanings(List.of("index p i p flexion ninety".split(" "))));
    }

    @Test
    void theHelpCardShowsTheImportedPartsAndItsOwn() {
        List<HelpCard.Section> sections = HAND.helpCard().sections();
        List<String> headings = sections.stream().map(HelpCard.Section::heading).toList();
        assertTrue(headings.containsAll(List.of("Bending and straightening", "Fingers", "Wrist")), headings::toString);
        sections.forEach(section -> section.examples()
                .forEach(example -> assertEquals(
                        1, HAND.meanings(List.of(example.split(" "))).size(), example)));
    }

    @Test
    void aClinicsOwnFileAddsAPhraseToTheOnesOfTheProgram() throws Exception {
        Path own = Files.writeString(folder.resolve("clinic.jsgf"), """
                #JSGF V1.0 UTF-8 en;
                grammar clinic.ours;
                import <arcsay.spoken.utterance>;
                public <all> = <utterance> | carry on {act:GO_AHEAD};
                """);
        SpokenGrammar grammar = SpokenGrammar.named(own.toString());
        assertEquals(Set.of(List.of(new Tag("act", "GO_AHEAD"))), grammar.meanings(List.of("carry", "on")));
        assertEquals(
                1, grammar.meanings(List.of("i p flexion sixty".split(" "))).size());
        assertEquals(THUMB.helpCard().sections(), grammar.helpCard().sections());
    }

    @Test
    void anImportedFileBesideTheFileIsReadAndChangesTheVersion() throws Exception {
        Path main = Files.writeString(
                folder.resolve("main.jsgf"),
                "#JSGF V1.0;\ngrammar a.main;\nimport <a.parts.*>;\npublic <u> = <a.parts.place> | <numbers.score>;");
        writeParts("public <place> = home {act:A};");
        SpokenGrammar first = SpokenGrammar.read(main);
        assertEquals(Set.of(List.of(new Tag("act", "A"))), first.meanings(List.of("home")));
        writeParts("public <place> = house {act:A};");
        SpokenGrammar second = SpokenGrammar.read(main);
        assertEquals(Set.of(), second.meanings(List.of("home")));
        assertNotEquals(first.version(), second.version());
    }

    @Test
    void aFileBesideTheFileGoesBeforeTheOneOfTheProgram() throws Exception {
        Files.writeString(
                folder.resolve("spoken.jsgf"), "#JSGF V1.0;\ngrammar arcsay.spoken;\npublic <hand> = paw {act:A};");
        Path main = Files.writeString(
                folder.resolve("main.jsgf"),
                "#JSGF V1.0;\ngrammar g;\nimport <arcsay.spoken.hand>;\npublic <u> = <hand>;");
        assertEquals(Set.of("paw"), SpokenGrammar.read(main).words());
    }

    private void writeParts(String rule) throws IOException {
        Files.writeString(folder.resolve("parts.jsgf"), "#JSGF V1.0;\ngrammar a.parts;\n" + rule);
    }

    @Test
    void aRuleOfTheFileGoesBeforeAnImportedOneOfTheSameName() throws Exception {
        SpokenGrammar grammar = SpokenGrammar.parse(
                "#JSGF V1.0;\ngrammar g;\nimport <arcsay.spoken.*>;\npublic <u> = <hand>;\n<hand> = palm {act:A};");
        assertEquals(1, grammar.meanings(List.of("palm")).size());
        assertEquals(Set.of(), grammar.meanings(List.of("left")));
        assertEquals(List.of(), grammar.helpCard().sections());
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
        import <arcsay.spoken.hinge>; public <u> = <hinge>;  | line 2: <arcsay.spoken.hinge> cannot be imported
        import <arcsay.nowhere.*>; public <u> = <x>;         | there is no grammar arcsay.nowhere
        import <numbers.many>; public <u> = <many>;          | <numbers.many> cannot be imported
        import spoken; public <u> = a;                       | expected an import such as
        import <spoken>; public <u> = a;                     | expected an import such as
        import <arcsay.spoken.*>; public <u> = <hinge>;      | <hinge> is used and not defined
        import <other.spoken.*>; public <u> = <hand>;        | calls itself 'arcsay.spoken' and not 'other.spoken'
        """)
    void aBrokenImportIsNamedWithItsReason(String rules, String message) {
        GrammarException broken =
                assertThrows(GrammarException.class, () -> SpokenGrammar.parse("#JSGF V1.0;\n" + rules));
        assertTrue(String.valueOf(broken.getMessage()).contains(message), broken.getMessage());
    }

    @ParameterizedTest
    @ValueSource(strings = {"one", "two"})
    void filesThatImportEachOtherAreRefused(String start) throws IOException {
        Files.writeString(
                folder.resolve("one.jsgf"), "#JSGF V1.0;\ngrammar a.one;\nimport <a.two.*>;\npublic <x> = b;");
        Files.writeString(
                folder.resolve("two.jsgf"), "#JSGF V1.0;\ngrammar a.two;\nimport <a.one.*>;\npublic <y> = c;");
        Path file = folder.resolve(start + ".jsgf");
        GrammarException broken = assertThrows(GrammarException.class, () -> SpokenGrammar.read(file));
        assertTrue(String.valueOf(broken.getMessage()).contains("imports itself"), broken.getMessage());
    }
}
