package org.arcsay.store;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;

/** The numbered steps that lead from an empty file to the newest schema; step n is the resource {@code schema/00n.sql}. */
final class Schema {
    /** The version that this program writes, kept in {@code user_version}. */
    static final int NEWEST = 1;

    private Schema() {}

    /**
     * Takes the open database from its version to the newest, one transaction for each step.
     *
     * @throws StoreException when rows would be left pointing at nothing; that step is then undone
     */
    static void migrate(Path file, Connection connection) throws SQLException, StoreException {
        for (int version = version(connection) + 1; version <= NEWEST; version++) {
            step(file, connection, version);
        }
    }

    static int version(Connection connection) throws SQLException {
        return (int) Pragmas.number(connection, "user_version");
    }

    private static void step(Path file, Connection connection, int version) throws SQLException, StoreException {
        try (Statement statement = connection.createStatement()) {
            statement.execute("BEGIN IMMEDIATE");
            try {
                statement.executeUpdate(script(version));
                statement.execute("PRAGMA application_id = " + Header.APPLICATION_ID);
                statement.execute("PRAGMA user_version = " + version);
                requireWholeReferences(file, statement);
                statement.execute("COMMIT");
            } catch (SQLException | StoreException | RuntimeException e) {
                undo(statement, e);
                throw e;
            }
        }
    }

    private static void requireWholeReferences(Path file, Statement statement) throws SQLException, StoreException {
        try (ResultSet violation = statement.executeQuery("PRAGMA foreign_key_check")) {
            if (violation.next()) {
                throw StoreException.damaged(file, "a row of " + violation.getString(1) + " points at nothing");
            }
        }
    }

    private static void undo(Statement statement, Exception cause) {
        try {
            statement.execute("ROLLBACK");
        } catch (SQLException e) {
            cause.addSuppressed(e);
        }
    }

    private static String script(int version) {
        String name = "schema/%03d.sql".formatted(version);
        try (InputStream in = Schema.class.getResourceAsStream(name)) {
            if (in == null) {
                throw new IllegalStateException("the program lacks " + name);
            }
            return new String(in.readAllBytes(), StandardCharsets.UTF_8);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
