package org.arcsay.grammar;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.MalformedInputException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Collections;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Objects;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.stream.IntStream;
import java.util.stream.Stream;

/**
 * How words are pronounced; immutable, for any thread.
 *
 * <p>A line of the text is a word, a tab, and its pronunciations with {@code |} between them, each a row of phones of the CMU
 * Pronouncing Dictionary without stress marks. Empty lines and lines that begin with {@code #} are left out.
 *
 * @param words every word with its pronunciations in the order given
 */
public record Lexicon(SortedMap<String, Set<List<String>>> words) {
    /** The 39 phones of the CMU Pronouncing Dictionary (its file {@code cmudict.phones}). */
    public static final Set<String> PHONES = Set.of(
            "AA AE AH AO AW AY B CH D DH EH ER EY F G HH IH IY JH K L M N NG OW OY P R S SH T TH UH UW V W Y Z ZH"
                    .split(" "));

    private static final String EXAMPLE = "; write for example: splint<tab>S P L IH N T";

    public Lexicon {
        words = Collections.unmodifiableSortedMap(new TreeMap<>(words));
    }

    /** No words. */
    public static final Lexicon EMPTY = new Lexicon(Collections.emptySortedMap());

    /** The lexicon that comes with the program; read once. */
    public static Lexicon standard() {
        return Standard.LEXICON;
    }

    private static final class Standard {
        static final Lexicon LEXICON = bundled();
    }

    private static Lexicon bundled() {
        try (InputStream in =
                Objects.requireNonNull(Lexicon.class.getResourceAsStream("/org/arcsay/grammar/lexicon.txt"))) {
            return parse(new String(in.readAllBytes(), StandardCharsets.UTF_8));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        } catch (GrammarException e) {
            throw new IllegalStateException("the built-in lexicon is broken: " + e.getMessage(), e);
        }
    }

    /**
     * A clinic's own words.
     *
     * @throws GrammarException when the file cannot be read or has an error; the message names the line
     */
    public static Lexicon read(Path file) throws GrammarException {
        try {
            return parse(Files.readString(file));
        } catch (MalformedInputException e) {
            throw new GrammarException("lexicon: " + file + " is not a UTF-8 text file");
        } catch (IOException e) {
            throw new GrammarException("lexicon: cannot read " + file + "; check that the file exists and may be read");
        }
    }

    /**
     * @throws GrammarException when the text has an error; the message names the line
     */
    public static Lexicon parse(String text) throws GrammarException {
        SortedMap<String, Set<List<String>>> words = new TreeMap<>();
        List<String> lines = text.lines().toList();
        for (int i = 0; i < lines.size(); i++) {
            String line = lines.get(i);
            if (!line.isBlank() && !line.startsWith("#")) {
                add(words, line, "lexicon, line " + (i + 1) + ": ");
            }
        }
        return new Lexicon(words);
    }

    private static void add(SortedMap<String, Set<List<String>>> words, String line, String where)
            throws GrammarException {
        int tab = line.indexOf('\t');
        String word = tab < 0 ? line : line.substring(0, tab);
        if (tab < 0 || !word.matches("[a-z][a-z'-]*")) {
            throw new GrammarException(where + "needs a word in small letters, a tab and its pronunciation" + EXAMPLE);
        }
        Set<List<String>> pronunciations = new LinkedHashSet<>();
        for (String pronunciation : line.substring(tab + 1).split("\\|", -1)) {
            pronunciations.add(phones(pronunciation.strip(), where));
        }
        if (words.put(word, pronunciations) != null) {
            throw new GrammarException(
                    where + "'" + word + "' has a line already; put all its pronunciations on one line");
        }
    }

    private static List<String> phones(String text, String where) throws GrammarException {
        if (text.isEmpty()) {
            throw new GrammarException(where + "has an empty pronunciation" + EXAMPLE);
        }
        List<String> phones = List.of(text.split("\\s+"));
        for (String phone : phones) {
            if (!PHONES.contains(phone)) {
                throw new GrammarException(where + "'" + phone + "' is not one of the phones "
                        + String.join(
                                " ",
                                Stream.of(PHONES.toArray(String[]::new))
                                        .sorted()
                                        .toList()));
            }
        }
        return phones;
    }

    /** This lexicon and another: words of both have the pronunciations of both. */
    public Lexicon with(Lexicon other) {
        if (other.words.isEmpty()) {
            return this;
        }
        SortedMap<String, Set<List<String>>> all = new TreeMap<>();
        Stream.of(this, other)
                .forEach(lexicon -> lexicon.words.forEach((word, pronunciations) ->
                        all.computeIfAbsent(word, w -> new LinkedHashSet<>()).addAll(pronunciations)));
        return new Lexicon(all);
    }

    /** Whether all ways of saying a text are, word by word, also ways of saying another: "eighty y" and "eighty why", not the other way round. */
    public boolean covers(List<String> other, List<String> text) {
        return other.size() == text.size()
                && IntStream.range(0, text.size()).allMatch(i -> covers(other.get(i), text.get(i)));
    }

    private boolean covers(String other, String word) {
        Set<List<String>> pronunciations = words.getOrDefault(word, Set.of());
        return other.equals(word)
                || (!pronunciations.isEmpty()
                        && words.getOrDefault(other, Set.of()).containsAll(pronunciations));
    }

    /** The text that {@link #parse} reads. */
    public String text() {
        StringBuilder text = new StringBuilder();
        words.forEach((word, pronunciations) -> text.append(word)
                .append('\t')
                .append(String.join(
                        " | ",
                        pronunciations.stream().map(p -> String.join(" ", p)).toList()))
                .append('\n'));
        return text.toString();
    }
}
