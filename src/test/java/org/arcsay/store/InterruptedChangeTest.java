package org.arcsay.store;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.Statement;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A crash in the middle of a transaction that uses a rollback journal, as when a restored backup is opened first. */
class InterruptedChangeTest {
    @TempDir
    private Path folder;

    @Test
    void recordsAreWholeAgainAsSoonAsTheyAreOpenedForWriting() throws Exception {
        Path file = leftBehindByACrash();
        StoreException looked = assertThrows(
                StoreException.class, () -> VisitStore.openReadOnly(file).close());
        assertEquals(StoreException.Problem.INTERRUPTED, looked.problem(), looked.getMessage());
        assertTrue(String.valueOf(looked.getMessage()).contains("Open the file once for writing"), looked.getMessage());

        try (VisitStore store = VisitStore.open(file)) {
            SchemaTest.assertHoldsSample(store, 1);
        }
        assertFalse(Files.exists(journal(file)));
        VisitStore.openReadOnly(file).close();
    }

    /** Copies the file and its journal while a transaction that has outgrown its cache is open: what a kill leaves. */
    private Path leftBehindByACrash() throws Exception {
        Path working = folder.resolve("working.db");
        SchemaTest.copySample(1, working);
        Path left = Files.createDirectory(folder.resolve("left")).resolve("arcsay.db");
        try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + working);
                Statement statement = connection.createStatement()) {
            statement.execute("PRAGMA journal_mode = DELETE");
            statement.execute("PRAGMA cache_size = 2");
            connection.setAutoCommit(false);
            statement.execute("CREATE TABLE cut_off (content BLOB)");
            for (int row = 0; row < 50; row++) {
                statement.execute("INSERT INTO cut_off VALUES (randomblob(20000))");
            }
            Files.copy(working, left);
            Files.copy(journal(working), journal(left));
            connection.rollback();
        }
        return left;
    }

    private static Path journal(Path file) {
        return file.resolveSibling(file.getFileName() + "-journal");
    }
}
