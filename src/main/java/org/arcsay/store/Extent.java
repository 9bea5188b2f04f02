package org.arcsay.store;

import java.nio.file.Path;
import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.HexFormat;

/**
 * How much a records file holds; two files of one origin with the same extent hold the same.
 *
 * @param rows patients, visits, events and readings together, and the protocols that were ever set
 * @param lastSeal the checksum of the event stored last, which depends on all before it in its visit; empty without events
 */
record Extent(long rows, String lastSeal) {
    private static final String ROWS = "SELECT (SELECT count(*) FROM patient) + (SELECT count(*) FROM visit)"
            + " + (SELECT count(*) FROM event) + (SELECT count(*) FROM reading)"
            + " + (SELECT coalesce(max(seq), 0) FROM sqlite_sequence WHERE name = 'protocol')";
    private static final String LAST_SEAL = "SELECT digest FROM seal ORDER BY event DESC LIMIT 1";

    static Extent of(Path file) throws StoreException {
        try (Database database = Opening.STANDARD.forReading(file)) {
            return of(database);
        }
    }

    static Extent of(Database database) throws StoreException {
        return database.read(Extent::of);
    }

    static Extent of(Connection connection) throws SQLException {
        try (Statement statement = connection.createStatement()) {
            return new Extent(rows(statement), lastSeal(statement));
        }
    }

    private static long rows(Statement statement) throws SQLException {
        try (ResultSet row = statement.executeQuery(ROWS)) {
            row.next();
            return row.getLong(1);
        }
    }

    private static String lastSeal(Statement statement) throws SQLException {
        try (ResultSet row = statement.executeQuery(LAST_SEAL)) {
            return row.next() ? HexFormat.of().formatHex(row.getBytes(1)) : "";
        }
    }
}
