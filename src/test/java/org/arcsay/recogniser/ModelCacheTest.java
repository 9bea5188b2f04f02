package org.arcsay.recogniser;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.FileTime;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.List;
import org.arcsay.grammar.Lexicon;
import org.arcsay.grammar.SpokenGrammar;
import org.arcsay.grammar.WordGraph;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

final class ModelCacheTest {
    private static final FileTime LONG_AGO = FileTime.fromMillis(1_000_000_000_000L);

    @TempDir
    Path temporary;

    private ModelCache cache;

    @BeforeEach
    void makeCache() {
        cache = new ModelCache(temporary.resolve("some/cache"));
    }

    private static WordGraph grammar() {
        return SpokenGrammar.standard().graph();
    }

    @Test
    void unpacksTheBuiltInModelOnce() throws Exception {
        Path network = cache.bundled().path().resolve("am/final.mdl");
        Files.setLastModifiedTime(network, LONG_AGO);
        assertEquals(network, cache.bundled().path().resolve("am/final.mdl"));
        assertEquals(LONG_AGO, Files.getLastModifiedTime(network));
        assertEquals(1, entries().size());
    }

    private List<Path> entries() throws IOException {
        try (var entries = Files.list(cache.root())) {
            return entries.toList();
        }
    }

    @Test
    void repairsDamagedCopy() throws Exception {
        Path network = cache.bundled().path().resolve("am/final.mdl");
        Files.writeString(network, "not a network");
        ModelFolder again = cache.bundled();
        assertEquals(
                Files.size(Path.of("models/en-thumb/am/final.mdl")),
                Files.size(again.path().resolve("am/final.mdl")));
    }

    @Test
    void isReadableByItsOwnerOnly() throws Exception {
        assumeTrue(Files.getFileStore(temporary).supportsFileAttributeView("posix"));
        Path model = cache.bundled().path();
        for (Path folder : List.of(model, cache.root())) {
            assertEquals("rwx------", PosixFilePermissions.toString(Files.getPosixFilePermissions(folder)));
        }
    }

    @Test
    void fitsModelToGrammarAndKeepsTheOriginal() throws Exception {
        ModelFolder bundled = cache.bundled();
        byte[] before = Files.readAllBytes(bundled.path().resolve(ModelFolder.GRAMMAR_GRAPH));
        ModelCache.Fitted fitted = cache.fit(bundled, grammar(), Lexicon.EMPTY);
        assertEquals(List.of(), fitted.missingWords());
        byte[] graph = Files.readAllBytes(fitted.folder().path().resolve(ModelFolder.GRAMMAR_GRAPH));
        assertArrayEquals(
                GrammarGraph.compile(grammar(), bundled.wordIds(), GraphCosts.DEFAULT)
                        .fst(),
                graph);
        assertArrayEquals(before, Files.readAllBytes(bundled.path().resolve(ModelFolder.GRAMMAR_GRAPH)));
        assertEquals(bundled.wordIds(), fitted.folder().wordIds());
    }

    @Test
    void makesEachFittingOnceAndRepairsIt() throws Exception {
        ModelFolder bundled = cache.bundled();
        Path graph =
                cache.fit(bundled, grammar(), Lexicon.EMPTY).folder().path().resolve(ModelFolder.GRAMMAR_GRAPH);
        Files.setLastModifiedTime(graph, LONG_AGO);
        cache.fit(bundled, grammar(), Lexicon.EMPTY);
        assertEquals(LONG_AGO, Files.getLastModifiedTime(graph));
        Files.writeString(graph, "spoiled");
        cache.fit(bundled, grammar(), Lexicon.EMPTY);
        assertTrue(Files.size(graph) > 1000);
    }

    @Test
    void keepsFittingsOfDifferentGrammarsApart() throws Exception {
        ModelFolder bundled = cache.bundled();
        Path one = cache.fit(bundled, grammar(), Lexicon.EMPTY).folder().path();
        Path other = cache.fit(
                        bundled,
                        SpokenGrammar.parse("#JSGF V1.0; grammar g; public <u> = stand by;")
                                .graph(),
                        Lexicon.EMPTY)
                .folder()
                .path();
        assertNotEquals(one, other);
    }

    @Test
    void saysThatTheFolderIsNotUsable() throws Exception {
        Path file = Files.writeString(temporary.resolve("file"), "");
        String message = assertThrows(ModelException.class, () -> new ModelCache(file).bundled())
                .getMessage();
        assertTrue(message.contains("cannot be unpacked into " + file), message);
    }
}
