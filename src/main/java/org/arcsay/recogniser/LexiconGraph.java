package org.arcsay.recogniser;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.stream.Stream;
import org.arcsay.grammar.Lexicon;
import org.arcsay.model.Word;

/**
 * A lexicon as the decoder takes it: sound units of the network in, words out. Immutable, for any thread.
 *
 * <p>Every phone has one state, entered by its even transition and left by going on, and stays by its odd one: the topology
 * of the model that comes with the program ({@code models/train/kaldi_model.py}). Phones depend on their place in the word
 * (begin, inside, end, single).
 *
 * @param fst content of an {@code HCLr.fst} file
 * @param wordIds every word and the unknown word, by number in the graph
 */
record LexiconGraph(byte[] fst, Map<String, Integer> wordIds) {
    /** Natural-log costs of a pause between words, and of sound that is no word; as the network was trained. */
    private static final double SILENCE_COST = 0.7;

    private static final double UNKNOWN_COST = 3;

    private static final int START = 0;
    private static final int BETWEEN_WORDS = 1;
    private static final int AFTER_WORD = 2;

    /**
     * @param phones number of every phone at its place, such as {@code AA_B}, and of {@code SIL} and {@code SPN}
     */
    static LexiconGraph compile(Lexicon lexicon, Map<String, Integer> phones) throws ModelException {
        Map<String, Integer> ids = number(lexicon);
        Builder builder = new Builder(phones);
        builder.pauses();
        lexicon.words()
                .forEach((word, pronunciations) -> pronunciations.forEach(
                        pronunciation -> builder.word(pronunciation, Objects.requireNonNull(ids.get(word), word))));
        builder.unknown(Objects.requireNonNull(ids.get(Word.UNKNOWN), Word.UNKNOWN));
        if (!builder.missing.isEmpty()) {
            throw new ModelException("The speech model lacks the phones " + String.join(", ", builder.missing)
                    + " of the lexicon, so own words cannot be added to it. Use the built-in model.");
        }
        return new LexiconGraph(builder.fst.lookAhead(), ids);
    }

    /** Words that begin alike get neighbouring numbers, which keeps the look-ahead small. */
    private static Map<String, Integer> number(Lexicon lexicon) {
        Map<String, Integer> ids = new LinkedHashMap<>();
        Comparator<Map.Entry<String, String>> byPronunciation = Map.Entry.comparingByValue();
        Stream<String> spoken = lexicon.words().entrySet().stream()
                .map(entry -> Map.entry(
                        entry.getKey(),
                        String.join(" ", entry.getValue().iterator().next())))
                .sorted(byPronunciation.thenComparing(Map.Entry.comparingByKey()))
                .map(Map.Entry::getKey);
        Stream.concat(spoken, Stream.of(Word.UNKNOWN)).forEach(word -> ids.put(word, ids.size() + 1));
        return ids;
    }

    /** The word list of the model folder. */
    String words() {
        StringBuilder text = new StringBuilder("<eps> 0\n");
        wordIds.forEach((word, id) -> text.append(word).append(' ').append(id).append('\n'));
        return text.toString();
    }

    /** A tree of phones that words share from their beginnings; for one thread. */
    private static final class Builder {
        private final Map<String, Integer> phones;
        private final FstWriter fst = new FstWriter(3, START);
        private final Map<List<String>, Integer> shared = new HashMap<>();
        private final List<String> missing = new ArrayList<>();

        Builder(Map<String, Integer> phones) {
            this.phones = phones;
            fst.accept(BETWEEN_WORDS);
            fst.accept(AFTER_WORD);
        }

        void pauses() {
            fst.silentArc(phone(START, "SIL", FstWriter.NOTHING, 0), 0, BETWEEN_WORDS);
            fst.silentArc(START, 0, BETWEEN_WORDS);
            fst.silentArc(phone(AFTER_WORD, "SIL", FstWriter.NOTHING, SILENCE_COST), 0, BETWEEN_WORDS);
            fst.silentArc(AFTER_WORD, SILENCE_COST, BETWEEN_WORDS);
        }

        void unknown(int id) {
            fst.silentArc(phone(BETWEEN_WORDS, "SPN", id, UNKNOWN_COST), 0, AFTER_WORD);
        }

        void word(List<String> pronunciation, int id) {
            int node = BETWEEN_WORDS;
            int last = pronunciation.size() - 1;
            for (int i = 0; i < last; i++) {
                List<String> prefix = pronunciation.subList(0, i + 1);
                Integer known = shared.get(prefix);
                if (known == null) {
                    known = phone(node, pronunciation.get(i) + (i == 0 ? "_B" : "_I"), FstWriter.NOTHING, 0);
                    shared.put(List.copyOf(prefix), known);
                }
                node = known;
            }
            fst.silentArc(phone(node, pronunciation.get(last) + (last == 0 ? "_S" : "_E"), id, 0), 0, AFTER_WORD);
        }

        /** The state in which the phone sounds. */
        private int phone(int from, String name, int word, double cost) {
            int number = phones.getOrDefault(name, 0);
            if (number == 0) {
                missing.add(name);
            }
            int state = fst.addState();
            fst.arc(from, 2 * number, word, cost, state);
            fst.arc(state, 2 * number - 1, FstWriter.NOTHING, 0, state);
            return state;
        }
    }
}
