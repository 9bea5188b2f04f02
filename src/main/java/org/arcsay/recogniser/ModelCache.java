package org.arcsay.recogniser;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.FileSystemException;
import java.nio.file.FileSystems;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.attribute.FileAttribute;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.arcsay.grammar.Lexicon;
import org.arcsay.grammar.WordGraph;

/**
 * A folder, readable by its owner only, with the built-in model unpacked and with models fitted to a grammar; any thread
 * and any process may use it. Each entry is made under a temporary name and renamed when complete; it can be deleted at
 * any time and is made again.
 *
 * @param root where the entries are
 */
public record ModelCache(Path root) {
    /** Name of the built-in model. */
    public static final String BUNDLED = "en-thumb";

    private static final String RESOURCES = "/org/arcsay/models/" + BUNDLED + "/";

    /** Fills a folder that is not yet visible to others. */
    private interface Filling {
        void into(Path folder) throws IOException;
    }

    /**
     * A model fitted to a grammar.
     *
     * @param folder ready to be loaded
     * @param missingWords words of the grammar that the model lacks, sorted; sentences with them cannot be heard
     */
    public record Fitted(ModelFolder folder, List<String> missingWords) {}

    /**
     * The built-in model, unpacked where needed and verified by checksum.
     *
     * @throws ModelException when the disk is full or the folder not writable
     */
    public ModelFolder bundled() throws ModelException {
        try {
            Checksums list = bundledList();
            Path folder = root.resolve(BUNDLED + "-" + list.id());
            try {
                return checked(folder, list);
            } catch (ModelException e) {
                delete(folder);
                make(folder, target -> unpack(list, target));
                return checked(folder, list);
            }
        } catch (IOException | UncheckedIOException e) {
            throw unusable(e);
        }
    }

    /** The folder's own list decides what is checked, so that must be the built-in one. */
    private static ModelFolder checked(Path folder, Checksums list) throws ModelException, IOException {
        Path own = folder.resolve(ModelFolder.CHECKSUMS);
        if (Files.isRegularFile(own) && !list.equals(Checksums.parse(Files.newBufferedReader(own)))) {
            throw new ModelException("The speech model in " + folder + " is damaged: its checksum list was changed.");
        }
        return ModelFolder.check(folder);
    }

    private static Checksums bundledList() throws IOException {
        try (InputStream in = resource(ModelFolder.CHECKSUMS)) {
            return Checksums.parse(in);
        }
    }

    private static void unpack(Checksums list, Path target) throws IOException {
        for (String file : list.byFile().keySet()) {
            copyResource(file, target);
        }
        copyResource(ModelFolder.CHECKSUMS, target);
    }

    private static void copyResource(String file, Path target) throws IOException {
        Files.createDirectories(target.resolve(file).getParent());
        try (InputStream in = resource(file)) {
            Files.copy(in, target.resolve(file));
        }
    }

    private static InputStream resource(String file) throws IOException {
        InputStream in = ModelCache.class.getResourceAsStream(RESOURCES + file);
        if (in == null) {
            throw new IOException("the program's file " + RESOURCES + file + " is missing; install it again");
        }
        return in;
    }

    /**
     * A copy of a model whose graph is the given grammar.
     *
     * @param own words that are added to the model, or further pronunciations of words that it has
     * @throws ModelException when the model cannot carry the grammar or the words, or the folder is not writable
     */
    public Fitted fit(ModelFolder model, WordGraph grammar, Lexicon own) throws ModelException {
        return fit(model, grammar, own, SentencePause.usual());
    }

    /**
     * As {@link #fit(ModelFolder, WordGraph, Lexicon)}.
     *
     * @param pause the silence that ends a sentence
     */
    public Fitted fit(ModelFolder model, WordGraph grammar, Lexicon own, SentencePause pause) throws ModelException {
        return fit(model, grammar, own, pause, GraphCosts.DEFAULT);
    }

    /** As above, with other costs; for calibration. */
    Fitted fit(ModelFolder model, WordGraph grammar, Lexicon own, SentencePause pause, GraphCosts costs)
            throws ModelException {
        Map<String, byte[]> made = new TreeMap<>();
        Map<String, Integer> wordIds = model.wordIds();
        if (!own.words().isEmpty()) {
            LexiconGraph words = LexiconGraph.compile(model.lexicon().with(own), model.phones());
            made.put(ModelFolder.LEXICON_GRAPH, words.fst());
            made.put(ModelFolder.WORDS, words.words().getBytes(StandardCharsets.UTF_8));
            wordIds = words.wordIds();
        }
        GrammarGraph graph = GrammarGraph.compile(grammar, wordIds, costs);
        made.put(ModelFolder.GRAMMAR_GRAPH, graph.fst());
        made.put(ModelFolder.DECODING, model.decoding(pause).getBytes(StandardCharsets.UTF_8));
        return new Fitted(fitted(model, made, wordIds), graph.missingWords());
    }

    /** A copy of a model in which some files are replaced by others. */
    private ModelFolder fitted(ModelFolder model, Map<String, byte[]> made, Map<String, Integer> wordIds)
            throws ModelException {
        String key = Checksums.of(made).id();
        Path folder = root.resolve("fitted-" + model.checksum() + "-" + key);
        try {
            if (!isFilled(folder, model, made)) {
                delete(folder);
                make(folder, target -> fill(target, model, made));
            }
            String version = made.containsKey(ModelFolder.WORDS) ? model.checksum() + "+" + key : model.checksum();
            return new ModelFolder(folder, version, wordIds);
        } catch (IOException | UncheckedIOException e) {
            throw unusable(e);
        }
    }

    private static boolean isFilled(Path folder, ModelFolder model, Map<String, byte[]> made) throws IOException {
        for (Map.Entry<String, byte[]> file : made.entrySet()) {
            Path copy = folder.resolve(file.getKey());
            if (!Files.isRegularFile(copy) || !Arrays.equals(Files.readAllBytes(copy), file.getValue())) {
                return false;
            }
        }
        for (Path file : sharedFiles(model, made.keySet())) {
            if (!isSame(model.path().resolve(file), folder.resolve(file.toString()))) {
                return false;
            }
        }
        return true;
    }

    /** A link to the model's own file, whose checksum was just verified, need not be read again. */
    private static boolean isSame(Path file, Path copy) throws IOException {
        return Files.isRegularFile(copy) && (Files.isSameFile(file, copy) || Files.mismatch(file, copy) < 0);
    }

    private static void fill(Path target, ModelFolder model, Map<String, byte[]> made) throws IOException {
        for (Path file : sharedFiles(model, made.keySet())) {
            Path copy = target.resolve(file.toString());
            Files.createDirectories(copy.getParent());
            linkOrCopy(model.path().resolve(file), copy);
        }
        for (Map.Entry<String, byte[]> file : made.entrySet()) {
            Files.write(target.resolve(file.getKey()), file.getValue());
        }
    }

    /** All files of a model but those that are replaced and the list that names them, as paths inside the folder. */
    private static List<Path> sharedFiles(ModelFolder model, Set<String> replaced) throws IOException {
        Set<Path> own = Stream.concat(replaced.stream(), Stream.of(ModelFolder.CHECKSUMS))
                .map(Path::of)
                .collect(Collectors.toSet());
        try (Stream<Path> files = Files.walk(model.path())) {
            return files.filter(Files::isRegularFile)
                    .map(model.path()::relativize)
                    .filter(file -> !own.contains(file))
                    .toList();
        }
    }

    private static void linkOrCopy(Path file, Path copy) throws IOException {
        try {
            Files.createLink(copy, file.toRealPath());
        } catch (UnsupportedOperationException | FileSystemException e) {
            Files.copy(file, copy);
        }
    }

    private void make(Path folder, Filling filling) throws IOException {
        Files.createDirectories(root, ownerOnly());
        Path temporary = Files.createTempDirectory(root, "new-", ownerOnly());
        try {
            filling.into(temporary);
            Files.move(temporary, folder, StandardCopyOption.ATOMIC_MOVE);
        } catch (FileSystemException e) {
            if (!Files.isDirectory(folder)) {
                throw e;
            }
        } finally {
            delete(temporary);
        }
    }

    private static FileAttribute<?>[] ownerOnly() {
        return FileSystems.getDefault().supportedFileAttributeViews().contains("posix")
                ? new FileAttribute<?>[] {
                    PosixFilePermissions.asFileAttribute(PosixFilePermissions.fromString("rwx------"))
                }
                : new FileAttribute<?>[0];
    }

    private static void delete(Path folder) throws IOException {
        if (Files.exists(folder)) {
            try (Stream<Path> files = Files.walk(folder)) {
                for (Path file : files.sorted(Comparator.reverseOrder()).toList()) {
                    Files.deleteIfExists(file);
                }
            }
        }
    }

    private ModelException unusable(Exception cause) {
        return new ModelException(
                "The speech model cannot be unpacked into " + root + " (" + cause.getMessage()
                        + "). Check that the folder is writable and the disk not full.",
                cause);
    }
}
