package org.arcsay.store;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import org.arcsay.store.StoreException.Problem;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class TwoProcessesTest {
    /** Opens the database, fills a visit and holds on until it is killed. */
    static final class Holder {
        public static void main(String[] arguments) throws Exception {
            try (VisitStore store = VisitStore.open(Path.of(arguments[0]))) {
                Records.fill(store, 31, 20);
                System.out.println("holding");
                Thread.sleep(60_000);
            }
        }
    }

    /** Tries to open the database and tells what the user would read. */
    static final class Second {
        public static void main(String[] arguments) throws Exception {
            try (VisitStore store = VisitStore.open(Path.of(arguments[0]))) {
                System.out.println("open " + store.patients());
            } catch (StoreException e) {
                System.out.println(e.problem() + " " + e.getMessage());
            }
        }
    }

    @Test
    void theSecondIsToldWhoHoldsTheFileAndMayLook(@TempDir Path folder) throws Exception {
        Path file = folder.resolve("arcsay.db");
        try (ChildJvm holder = ChildJvm.start(Holder.class, file.toString())) {
            assertEquals("holding", holder.line());
            StoreException refused = assertThrows(StoreException.class, () -> VisitStore.open(file));
            assertEquals(Problem.IN_USE, refused.problem());
            assertTrue(
                    String.valueOf(refused.getMessage()).contains("process " + holder.pid() + ", since "),
                    refused.getMessage());
            try (VisitStore looking = VisitStore.openReadOnly(file)) {
                assertEquals(20, looking.history(1).size());
                looking.integrityCheck();
            }
        }
        try (VisitStore store = VisitStore.open(file)) {
            assertEquals(20, store.history(1).size());
            try (ChildJvm second = ChildJvm.start(Second.class, file.toString())) {
                String said = second.line();
                assertTrue(said.startsWith("IN_USE"), said);
                assertTrue(said.contains("process " + ProcessHandle.current().pid()), said);
                assertEquals(0, second.exit());
            }
        }
        FaultTable.row(
                "second",
                "second copy of the program on the same records (real processes)",
                2,
                0,
                "\"… already open … (process …, since …)\"; it may look at the records");
    }
}
