package org.arcsay.recogniser;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import org.arcsay.grammar.GrammarException;
import org.arcsay.grammar.Lexicon;

/**
 * A checked model folder in the layout that Vosk 0.3 loads; immutable, for any thread.
 *
 * @param path where it is
 * @param checksum short checksum over all files that decide what is heard
 * @param wordIds every word of the model with its number in the model's graphs
 */
public record ModelFolder(Path path, String checksum, Map<String, Integer> wordIds) {
    static final String GRAMMAR_GRAPH = "graph/Gr.fst";
    static final String CHECKSUMS = "SHA256SUMS";
    static final String WORDS = "graph/words.txt";
    static final String DECODING = "conf/model.conf";
    static final String LEXICON_GRAPH = "graph/HCLr.fst";

    private static final String LEXICON = "graph/lexicon.txt";
    private static final String PHONES = "graph/phones.txt";

    private static final String COMBINED_GRAPH = "graph/HCLG.fst";
    private static final List<String> NEEDED = List.of(
            "am/final.mdl",
            "conf/mfcc.conf",
            DECODING,
            LEXICON_GRAPH,
            GRAMMAR_GRAPH,
            "graph/disambig_tid.int",
            "graph/phones/word_boundary.int");

    public ModelFolder {
        wordIds = Map.copyOf(wordIds);
    }

    /**
     * Checks a folder: needed files, their checksums where it has a list of them, readable words.
     *
     * @throws ModelException saying what is missing or damaged
     */
    public static ModelFolder check(Path folder) throws ModelException {
        if (!Files.isDirectory(folder)) {
            throw new ModelException(
                    "There is no speech model at " + folder
                            + ". Give the folder that holds am, conf and graph, or leave the option out to use the built-in model.");
        }
        requireFiles(folder);
        return new ModelFolder(folder, verifiedId(folder), readWords(folder));
    }

    /** The settings of the decoder with a pause that ends a sentence. */
    String decoding(SentencePause pause) throws ModelException {
        try {
            return pause.in(Files.readString(path.resolve(DECODING)));
        } catch (IOException e) {
            throw new ModelException(
                    "The speech model in " + path + " cannot be read (" + e.getMessage()
                            + "). Check the access rights or unpack it again.",
                    e);
        }
    }

    private static String verifiedId(Path folder) throws ModelException {
        try {
            Checksums expected = readList(folder.resolve(CHECKSUMS));
            Set<String> files = new TreeSet<>(NEEDED);
            expected.byFile().keySet().stream()
                    .filter(file -> Files.isRegularFile(folder.resolve(file)))
                    .forEach(files::add);
            Checksums found = Checksums.of(folder, files);
            requireUndamaged(folder, found.differing(expected));
            return found.only(NEEDED).id();
        } catch (IOException e) {
            throw new ModelException(
                    "The speech model in " + folder + " cannot be read (" + e.getMessage()
                            + "). Check the access rights or unpack it again.",
                    e);
        }
    }

    private static Checksums readList(Path list) throws IOException {
        if (!Files.isRegularFile(list)) {
            return Checksums.NONE;
        }
        try (InputStream in = Files.newInputStream(list)) {
            return Checksums.parse(in);
        }
    }

    private static void requireUndamaged(Path folder, List<String> damaged) throws ModelException {
        if (!damaged.isEmpty()) {
            throw new ModelException("The speech model in " + folder + " is damaged: " + String.join(", ", damaged)
                    + " differ from the checksum list " + CHECKSUMS + ". Unpack it again.");
        }
    }

    private static void requireFiles(Path folder) throws ModelException {
        List<String> missing = NEEDED.stream()
                .filter(file -> !Files.isRegularFile(folder.resolve(file)))
                .toList();
        if (missing.isEmpty()) {
            return;
        }
        if (Files.isRegularFile(folder.resolve(COMBINED_GRAPH))) {
            throw new ModelException("The speech model in " + folder + " has one fixed graph (" + COMBINED_GRAPH
                    + ") and cannot be restricted to the spoken grammar."
                    + " Use a model with graph/HCLr.fst and graph/Gr.fst, such as the built-in one.");
        }
        throw new ModelException("The speech model in " + folder + " is incomplete: " + String.join(", ", missing)
                + " missing. Unpack it again.");
    }

    private static Map<String, Integer> readWords(Path folder) throws ModelException {
        return readNumbers(folder.resolve(WORDS), "word list");
    }

    private static Map<String, Integer> readNumbers(Path file, String what) throws ModelException {
        try {
            Map<String, Integer> ids = new LinkedHashMap<>();
            for (String line : Files.readAllLines(file, StandardCharsets.UTF_8)) {
                String[] fields = line.strip().split("\\s+");
                ids.put(fields[0], Integer.parseInt(fields[1]));
            }
            return ids;
        } catch (IOException | RuntimeException e) {
            throw new ModelException(
                    "The " + what + " " + file + " cannot be read (" + e.getMessage() + "). Unpack the model again.",
                    e);
        }
    }

    /**
     * The pronunciations of the model's words.
     *
     * @throws ModelException when the model comes without them, so that no word can be added to it
     */
    Lexicon lexicon() throws ModelException {
        if (!Files.isRegularFile(path.resolve(LEXICON))) {
            throw new ModelException("The speech model in " + path + " comes without its pronunciations (" + LEXICON
                    + "), so own words cannot be added to it. Use the built-in model, or leave the own words out.");
        }
        try {
            return Lexicon.read(path.resolve(LEXICON));
        } catch (GrammarException e) {
            throw new ModelException("The speech model in " + path + " is damaged: " + e.getMessage(), e);
        }
    }

    /** Number of every phone at its place in a word. */
    Map<String, Integer> phones() throws ModelException {
        return readNumbers(path.resolve(PHONES), "phone list");
    }

    /** The words a speaker can say; without the model's own marks. */
    public Set<String> words() {
        Set<String> words = new TreeSet<>(wordIds.keySet());
        words.removeIf(word -> !isSpoken(word));
        return words;
    }

    static boolean isSpoken(String word) {
        return "<#[!".indexOf(word.charAt(0)) < 0;
    }

    /** Those of the given words that the model lacks, sorted. */
    public List<String> missing(Collection<String> grammarWords) {
        return grammarWords.stream()
                .filter(word -> !wordIds.containsKey(word))
                .sorted()
                .distinct()
                .toList();
    }

    /** A warning for the user where the path may not work everywhere: libvosk on Windows takes ASCII paths only. */
    public Optional<String> pathWarning() {
        return StandardCharsets.US_ASCII.newEncoder().canEncode(path.toString())
                ? Optional.empty()
                : Optional.of("The path " + path + " has letters outside plain ASCII; on Windows the model may not load"
                        + " from there. Move it to a plain path if so.");
    }
}
