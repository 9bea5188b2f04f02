package org.arcsay.app;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.arcsay.store.VisitStore;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class DemoVisitTest {
    @TempDir
    private Path temporary;

    private List<Path> folders() throws IOException {
        try (Stream<Path> folders = Files.list(temporary)) {
            return folders.sorted().toList();
        }
    }

    @Test
    void nothingIsLeftWhenItEnds() throws Exception {
        DemoVisit.open(temporary).close();
        assertEquals(List.of(), folders());
    }

    @Test
    void whatAKilledOneLeftIsRemovedByTheNextAndARunningOneStays() throws Exception {
        Path left = Files.createDirectory(temporary.resolve("arcsay-demo-left"));
        VisitStore.open(left.resolve("arcsay.db")).close();
        Path other = Files.createFile(temporary.resolve("arcsay-demo-notes"));
        Path empty = Files.createDirectory(temporary.resolve("arcsay-demo-of-something-else"));
        try (DemoVisit running = DemoVisit.open(temporary)) {
            assertFalse(Files.exists(left), "what a killed demo left");
            DemoVisit.open(temporary).close();
            assertTrue(Files.exists(running.home().database()), "a running demo was removed");
            assertTrue(Files.exists(other) && Files.exists(empty), "something that is not a demo was removed");
        }
    }
}
