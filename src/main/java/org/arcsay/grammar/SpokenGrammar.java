package org.arcsay.grammar;

import java.io.IOException;
import java.nio.charset.MalformedInputException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.SortedSet;
import java.util.TreeMap;
import java.util.TreeSet;
import org.arcsay.model.HelpCard;

/** The spoken grammar, read once: what can be said, what it means and which words it needs. Any thread may use it. */
public final class SpokenGrammar {
    private static final Map<String, String> BUNDLED = new TreeMap<>(Map.of("thumb", "spoken", "hand", "hand"));

    private final JsgfLinker.Rules rules;
    private final Automaton automaton;
    private final Matcher matcher;
    private final String version;
    private final Lexicon ownWords;

    private SpokenGrammar(JsgfLinker.Rules rules, String version, Lexicon ownWords) {
        this.rules = rules;
        this.ownWords = ownWords;
        this.automaton = Automaton.of(rules);
        this.matcher = new Matcher(automaton);
        this.version = version;
    }

    /** The grammar of the thumb, which is the usual one. */
    public static SpokenGrammar standard() {
        return bundled("spoken");
    }

    /** The grammar of thumb, fingers and wrist. */
    public static SpokenGrammar hand() {
        return bundled("hand");
    }

    /** The short names of the grammars that come with the program. */
    public static List<String> bundled() {
        return List.copyOf(BUNDLED.keySet());
    }

    /**
     * A grammar that comes with the program by its short name, or else a file.
     *
     * @throws GrammarException when the file cannot be read or has an error; the message names the line
     */
    public static SpokenGrammar named(String nameOrFile) throws GrammarException {
        String known = BUNDLED.get(nameOrFile);
        return known == null ? read(Path.of(nameOrFile)) : bundled(known);
    }

    /** Whether a grammar with this short name comes with the program. */
    public static boolean isBundled(String name) {
        return BUNDLED.containsKey(name);
    }

    private static SpokenGrammar bundled(String file) {
        try {
            return parse(GrammarLibrary.bundled(file).orElseThrow());
        } catch (GrammarException e) {
            throw new IllegalStateException("the built-in grammar is broken: " + e.getMessage(), e);
        }
    }

    /**
     * A clinic's own grammar file. What it imports is looked for beside it and then among the grammars of the program.
     *
     * @throws GrammarException when it cannot be read or has an error; the message names the line
     */
    public static SpokenGrammar read(Path file) throws GrammarException {
        return of(textOf(file), GrammarLibrary.beside(file));
    }

    static String textOf(Path file) throws GrammarException {
        try {
            return Files.readString(file);
        } catch (MalformedInputException e) {
            throw new GrammarException("grammar: " + file + " is not a UTF-8 text file");
        } catch (IOException e) {
            throw new GrammarException("grammar: cannot read " + file + "; check that the file exists and may be read");
        }
    }

    /**
     * A grammar from its text; it can import the grammars that come with the program.
     *
     * @throws GrammarException when the text has an error; the message names the line
     */
    public static SpokenGrammar parse(String text) throws GrammarException {
        return of(text, GrammarLibrary::bundled);
    }

    private static SpokenGrammar of(String text, GrammarLibrary library) throws GrammarException {
        JsgfLinker.Rules rules = JsgfLinker.link(text, library);
        return new SpokenGrammar(rules, checksum(String.join("", rules.texts())), Lexicon.EMPTY);
    }

    /** The same sentences, with pronunciations of words that the speech model need not know. */
    public SpokenGrammar with(Lexicon own) {
        return new SpokenGrammar(rules, version, own);
    }

    /** Pronunciations to be added to the speech model's; empty for the grammar that comes with the program. */
    public Lexicon ownWords() {
        return ownWords;
    }

    /** Short checksum of the text and of all that it imports, stored with every entry. */
    public String version() {
        return version;
    }

    /** Every meaning that the words can have; empty when they are no sentence, more than one only in a broken grammar. */
    public Set<List<Tag>> meanings(List<String> words) {
        return matcher.match(words);
    }

    /** Whether some sentence begins with these words, or is made of them alone. */
    public boolean isBeginning(List<String> words) {
        return matcher.isBeginning(words);
    }

    /** Words that have exactly this meaning; empty when it cannot be said. */
    public Optional<List<String>> spell(List<Tag> meaning) {
        return new Speller(automaton, meaning).spell();
    }

    /** All sentences as the smallest deterministic graph; builds it anew on each call. */
    public WordGraph graph() {
        return WordGraphBuilder.build(automaton);
    }

    /** Every word that any sentence uses. */
    public SortedSet<String> words() {
        SortedSet<String> words = new TreeSet<>();
        for (int state = 0; state < automaton.size(); state++) {
            for (Automaton.Arc arc : automaton.arcs(state)) {
                if (arc.word() != null) {
                    words.add(arc.word());
                }
            }
        }
        return words;
    }

    /**
     * Sentences that have more than one meaning, at most {@code limit} of them; empty for a sound grammar. The check covers
     * the whole language, not a sample.
     */
    public List<String> ambiguities(int limit) {
        return new AmbiguityCheck(automaton).find(limit);
    }

    /** What can be said, for people, from the comments of the grammar file. */
    public HelpCard helpCard() {
        return Examples.of(rules);
    }

    private static String checksum(String text) {
        try {
            byte[] digest = MessageDigest.getInstance("SHA-256").digest(text.getBytes(StandardCharsets.UTF_8));
            return HexFormat.of().formatHex(digest, 0, 6);
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException(e);
        }
    }
}
