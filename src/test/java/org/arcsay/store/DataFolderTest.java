package org.arcsay.store;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.nio.file.FileSystems;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Places on Linux: XDG Base Directory Specification 0.8. Places on macOS and Windows: their common practice. */
class DataFolderTest {
    private static final Path HOME = Path.of("/home/ht");

    private static DataFolder resolve(String system, Map<String, String> environment) {
        return DataFolder.resolve(Optional.empty(), environment, system, HOME);
    }

    @Test
    void anOptionWinsOverTheVariable() {
        DataFolder folder =
                DataFolder.resolve(Optional.of(Path.of("/a")), Map.of(DataFolder.VARIABLE, "/b"), "Linux", HOME);
        assertEquals(Path.of("/a/arcsay.db"), folder.database());
        assertEquals(Path.of("/a/backups"), folder.backups());
        assertEquals(Path.of("/a/cache/models"), folder.models());
        assertEquals(Path.of("/a/config/settings.properties"), folder.settings());
    }

    @Test
    void theVariableWinsOverThePlatform() {
        Map<String, String> environment = Map.of(DataFolder.VARIABLE, "/b", "XDG_DATA_HOME", "/c");
        assertEquals(Path.of("/b/arcsay.db"), resolve("Linux", environment).database());
    }

    @Test
    void linuxFollowsTheXdgSpecification() {
        DataFolder plain = resolve("Linux", Map.of());
        assertEquals(HOME.resolve(".local/share/arcsay"), plain.data());
        assertEquals(HOME.resolve(".config/arcsay"), plain.config());
        assertEquals(HOME.resolve(".cache/arcsay"), plain.cache());
        assertEquals(
                Path.of("/c/arcsay"),
                resolve("Linux", Map.of("XDG_DATA_HOME", "/c")).data());
    }

    @Test
    void aRelativeXdgVariableIsIgnored() {
        assertEquals(
                HOME.resolve(".local/share/arcsay"),
                resolve("Linux", Map.of("XDG_DATA_HOME", "c")).data());
    }

    @Test
    void macAndWindowsHaveTheirOwnPlaces() {
        assertEquals(
                HOME.resolve("Library/Application Support/Arcsay"),
                resolve("Mac OS X", Map.of()).data());
        assertEquals(
                Path.of("/local/Arcsay"),
                resolve("Windows 11", Map.of("LOCALAPPDATA", "/local")).data());
    }

    @Test
    void whatIsCreatedBelongsToTheOwnerOnly(@TempDir Path temp) throws Exception {
        assumeTrue(FileSystems.getDefault().supportedFileAttributeViews().contains("posix"), "needs POSIX permissions");
        DataFolder folder = DataFolder.resolve(Optional.of(temp.resolve("a/b"))).create();
        for (Path made :
                new Path[] {temp.resolve("a"), folder.data(), folder.backups(), folder.config(), folder.cache()}) {
            assertEquals(
                    "rwx------", PosixFilePermissions.toString(Files.getPosixFilePermissions(made)), made.toString());
        }
        try (VisitStore store = VisitStore.open(folder.database());
                var files = Files.list(folder.data())) {
            store.patients();
            for (Path file : files.filter(Files::isRegularFile).toList()) {
                assertEquals(
                        "rw-------",
                        PosixFilePermissions.toString(Files.getPosixFilePermissions(file)),
                        file.toString());
            }
        }
    }
}
