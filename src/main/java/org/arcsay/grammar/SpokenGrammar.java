package org.arcsay.grammar;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.MalformedInputException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.SortedSet;
import java.util.TreeSet;
import org.arcsay.model.HelpCard;

/** The spoken grammar, read once: what can be said, what it means and which words it needs. Any thread may use it. */
public final class SpokenGrammar {
    private final JsgfReader.Rules rules;
    private final Automaton automaton;
    private final Matcher matcher;
    private final String version;
    private final Lexicon ownWords;

    private SpokenGrammar(JsgfReader.Rules rules, String version, Lexicon ownWords) {
        this.rules = rules;
        this.ownWords = ownWords;
        this.automaton = Automaton.of(rules);
        this.matcher = new Matcher(automaton);
        this.version = version;
    }

    /** The grammar that comes with the program. */
    public static SpokenGrammar standard() {
        try (InputStream in =
                Objects.requireNonNull(SpokenGrammar.class.getResourceAsStream("/org/arcsay/grammar/spoken.jsgf"))) {
            return parse(new String(in.readAllBytes(), StandardCharsets.UTF_8));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        } catch (GrammarException e) {
            throw new IllegalStateException("the built-in grammar is broken: " + e.getMessage(), e);
        }
    }

    /**
     * A clinic's own grammar file.
     *
     * @throws GrammarException when it cannot be read or has an error; the message names the line
     */
    public static SpokenGrammar read(Path file) throws GrammarException {
        try {
            return parse(Files.readString(file));
        } catch (MalformedInputException e) {
            throw new GrammarException("grammar: " + file + " is not a UTF-8 text file");
        } catch (IOException e) {
            throw new GrammarException("grammar: cannot read " + file + "; check that the file exists and may be read");
        }
    }

    /**
     * @throws GrammarException when the text has an error; the message names the line
     */
    public static SpokenGrammar parse(String text) throws GrammarException {
        return new SpokenGrammar(JsgfReader.read(text), checksum(text), Lexicon.EMPTY);
    }

    /** The same sentences, with pronunciations of words that the speech model need not know. */
    public SpokenGrammar with(Lexicon own) {
        return new SpokenGrammar(rules, version, own);
    }

    /** Pronunciations to be added to the speech model's; empty for the grammar that comes with the program. */
    public Lexicon ownWords() {
        return ownWords;
    }

    /** Short checksum of the text, stored with every entry. */
    public String version() {
        return version;
    }

    /** Every meaning that the words can have; empty when they are no sentence, more than one only in a broken grammar. */
    public Set<List<Tag>> meanings(List<String> words) {
        return matcher.match(words);
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
