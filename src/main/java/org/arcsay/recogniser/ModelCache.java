package org.arcsay.recogniser;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
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
import java.util.stream.Stream;
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
            if (!list.damaged(folder).isEmpty()) {
                delete(folder);
            }
            make(folder, target -> unpack(list, target));
            return ModelFolder.check(folder);
        } catch (IOException | UncheckedIOException e) {
            throw unusable(e);
        }
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
     * @throws ModelException when the model cannot carry the grammar, or the folder is not writable
     */
    public Fitted fit(ModelFolder model, WordGraph grammar) throws ModelException {
        return fit(model, grammar, GraphCosts.DEFAULT);
    }

    /** As {@link #fit(ModelFolder, WordGraph)}, with other costs; for calibration. */
    public Fitted fit(ModelFolder model, WordGraph grammar, GraphCosts costs) throws ModelException {
        GrammarGraph graph = GrammarGraph.compile(grammar, model.wordIds(), costs);
        String key = Checksums.of(graph.fst()).substring(0, 12);
        Path folder = root.resolve("fitted-" + model.checksum() + "-" + key);
        try {
            if (!holds(folder.resolve(ModelFolder.GRAMMAR_GRAPH), graph.fst())) {
                delete(folder);
            }
            make(folder, target -> fill(target, model, graph));
            return new Fitted(ModelFolder.check(folder), graph.missingWords());
        } catch (IOException | UncheckedIOException e) {
            throw unusable(e);
        }
    }

    private static boolean holds(Path file, byte[] content) throws IOException {
        return Files.isRegularFile(file) && Arrays.equals(Files.readAllBytes(file), content);
    }

    private static void fill(Path target, ModelFolder model, GrammarGraph graph) throws IOException {
        try (Stream<Path> files = Files.walk(model.path())) {
            for (Path file : files.filter(Files::isRegularFile).toList()) {
                Path relative = model.path().relativize(file);
                Path copy = target.resolve(relative.toString());
                Files.createDirectories(copy.getParent());
                String name = relative.toString().replace('\\', '/');
                if (!name.equals(ModelFolder.GRAMMAR_GRAPH) && !name.equals(ModelFolder.CHECKSUMS)) {
                    linkOrCopy(file, copy);
                }
            }
        }
        Files.write(target.resolve(ModelFolder.GRAMMAR_GRAPH), graph.fst());
    }

    private static void linkOrCopy(Path file, Path copy) throws IOException {
        try {
            Files.createLink(copy, file.toRealPath());
        } catch (UnsupportedOperationException | FileSystemException e) {
            Files.copy(file, copy);
        }
    }

    private void make(Path folder, Filling filling) throws IOException {
        if (Files.isDirectory(folder)) {
            return;
        }
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
