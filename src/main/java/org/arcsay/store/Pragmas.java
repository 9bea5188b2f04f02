package org.arcsay.store;

import java.nio.file.Path;
import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.LinkedHashMap;
import java.util.Map;
import org.arcsay.store.StoreException.Problem;
import org.sqlite.SQLiteConfig;
import org.sqlite.SQLiteConfig.JournalMode;
import org.sqlite.SQLiteConfig.Pragma;
import org.sqlite.SQLiteConfig.SynchronousMode;

/**
 * How every connection is set up: the safe settings are made and then read back.
 *
 * <p>Meaning and defaults: SQLite documentation, "PRAGMA Statements".
 */
final class Pragmas {
    private static final int BUSY_TIMEOUT_MS = 5000;
    private static final Map<String, String> REQUIRED = required();

    private Pragmas() {}

    private static Map<String, String> required() {
        Map<String, String> values = new LinkedHashMap<>();
        values.put("synchronous", "2");
        values.put("foreign_keys", "1");
        values.put("busy_timeout", String.valueOf(BUSY_TIMEOUT_MS));
        values.put("trusted_schema", "0");
        values.put("cell_size_check", "1");
        values.put("secure_delete", "1");
        values.put("fullfsync", "1");
        values.put("checkpoint_fullfsync", "1");
        return values;
    }

    /**
     * Every event is moved from the log into the file at once: were the log to hold more than the last one, damage to its middle
     * would drop all that follows, and SQLite would not tell.
     */
    static SQLiteConfig forWriting() {
        SQLiteConfig config = common();
        config.setJournalMode(JournalMode.WAL);
        config.setPragma(Pragma.WAL_AUTOCHECKPOINT, "1");
        return config;
    }

    static SQLiteConfig forReading() {
        SQLiteConfig config = common();
        config.setReadOnly(true);
        return config;
    }

    private static SQLiteConfig common() {
        SQLiteConfig config = new SQLiteConfig();
        config.setSynchronous(SynchronousMode.FULL);
        config.enforceForeignKeys(true);
        config.setBusyTimeout(BUSY_TIMEOUT_MS);
        config.setPragma(Pragma.SECURE_DELETE, "true");
        return config;
    }

    /** Makes the settings that the driver's configuration does not know. */
    static void complete(Connection connection) throws SQLException {
        try (Statement statement = connection.createStatement()) {
            for (String name : new String[] {
                "trusted_schema = 0", "cell_size_check = 1", "fullfsync = 1", "checkpoint_fullfsync = 1"
            }) {
                statement.execute("PRAGMA " + name);
            }
        }
    }

    /**
     * Reads every setting back.
     *
     * @throws StoreException when one is not as it was set
     */
    static void verify(Path file, Connection connection, boolean writable) throws SQLException, StoreException {
        for (Map.Entry<String, String> pragma : REQUIRED.entrySet()) {
            require(file, connection, pragma.getKey(), pragma.getValue());
        }
        if (writable) {
            require(file, connection, "journal_mode", "wal");
            require(file, connection, "wal_autocheckpoint", "1");
        }
    }

    private static void require(Path file, Connection connection, String name, String wanted)
            throws SQLException, StoreException {
        String found = text(connection, name);
        if (!wanted.equals(found)) {
            throw new StoreException(
                    Problem.UNSAFE,
                    "The records file " + file + " cannot be used safely here (" + name + " is " + found
                            + " instead of " + wanted + "). Keep the data folder on a local disk of this computer.");
        }
    }

    static long number(Connection connection, String name) throws SQLException {
        return Long.parseLong(text(connection, name));
    }

    private static String text(Connection connection, String name) throws SQLException {
        try (Statement statement = connection.createStatement();
                ResultSet row = statement.executeQuery("PRAGMA " + name)) {
            return row.next() ? row.getString(1) : "";
        }
    }
}
