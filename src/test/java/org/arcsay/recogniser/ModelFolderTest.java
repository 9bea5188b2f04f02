package org.arcsay.recogniser;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.RandomAccessFile;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Works on copies of the built-in model. */
final class ModelFolderTest {
    private static final Path BUNDLED = Path.of("models/en-thumb");

    @TempDir
    Path temporary;

    private Path folder;

    @BeforeEach
    void copyModel() throws IOException {
        folder = temporary.resolve("model");
        try (var files = Files.walk(BUNDLED)) {
            for (Path file : files.filter(Files::isRegularFile).toList()) {
                Path copy = folder.resolve(BUNDLED.relativize(file).toString());
                Files.createDirectories(copy.getParent());
                Files.copy(file, copy);
            }
        }
    }

    private String refusal() {
        return assertThrows(ModelException.class, () -> ModelFolder.check(folder))
                .getMessage();
    }

    @Test
    void acceptsTheBuiltInModel() throws Exception {
        ModelFolder model = ModelFolder.check(folder);
        assertTrue(model.words().containsAll(Set.of("flexion", "seventy", "i", "p")));
        assertFalse(model.words().contains("[unk]") || model.words().contains("<eps>"));
        assertEquals(List.of("perambulate", "zyzzyva"), model.missing(List.of("zyzzyva", "flexion", "perambulate")));
    }

    @Test
    void everyFileOfTheBuiltInModelIsInItsChecksumList() throws Exception {
        Checksums list;
        try (var in = Files.newInputStream(BUNDLED.resolve(ModelFolder.CHECKSUMS))) {
            list = Checksums.parse(in);
        }
        try (var files = Files.walk(BUNDLED)) {
            Set<String> there = files.filter(Files::isRegularFile)
                    .map(file -> BUNDLED.relativize(file).toString().replace('\\', '/'))
                    .filter(file -> !file.equals(ModelFolder.CHECKSUMS))
                    .collect(java.util.stream.Collectors.toSet());
            assertEquals(there, list.byFile().keySet());
        }
        assertEquals(List.of(), list.damaged(BUNDLED));
    }

    @Test
    void saysThatThereIsNoModel() {
        folder = temporary.resolve("nowhere");
        assertTrue(refusal().contains("no speech model at " + folder));
    }

    @Test
    void namesMissingFiles() throws Exception {
        Files.delete(folder.resolve("graph/HCLr.fst"));
        Files.delete(folder.resolve("am/final.mdl"));
        assertTrue(refusal().contains("incomplete: am/final.mdl, graph/HCLr.fst"), this::refusal);
    }

    @Test
    void namesDamagedFile() throws Exception {
        try (RandomAccessFile file =
                new RandomAccessFile(folder.resolve("am/final.mdl").toFile(), "rw")) {
            file.seek(5_000_000);
            int old = file.read();
            file.seek(5_000_000);
            file.write(old ^ 1);
        }
        assertTrue(refusal().contains("damaged: am/final.mdl"), this::refusal);
    }

    @Test
    void refusesModelWithOneFixedGraph() throws Exception {
        Files.move(folder.resolve("graph/HCLr.fst"), folder.resolve("graph/HCLG.fst"));
        assertTrue(refusal().contains("cannot be restricted"), this::refusal);
    }

    @Test
    void refusesUnreadableWordList() throws Exception {
        Files.delete(folder.resolve(ModelFolder.CHECKSUMS));
        Files.writeString(folder.resolve(ModelFolder.WORDS), "flexion one\n");
        assertTrue(refusal().contains("word list"), this::refusal);
    }

    @Test
    void tellsModelsApart() throws Exception {
        String original = ModelFolder.check(folder).checksum();
        Files.delete(folder.resolve(ModelFolder.CHECKSUMS));
        assertEquals(original, ModelFolder.check(folder).checksum());
        Files.writeString(folder.resolve("conf/model.conf"), "--beam=9\n");
        assertNotEquals(original, ModelFolder.check(folder).checksum());
    }

    @Test
    void warnsOfPathsOutsideAscii() {
        assertTrue(new ModelFolder(Path.of("/home/zoë/model"), "", Map.of())
                .pathWarning()
                .orElseThrow()
                .contains("zoë"));
        assertTrue(new ModelFolder(Path.of("/home/zoe/model"), "", Map.of())
                .pathWarning()
                .isEmpty());
    }
}
