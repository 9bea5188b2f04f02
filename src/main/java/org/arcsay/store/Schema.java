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
import java.util.List;
import java.util.stream.IntStream;
import org.arcsay.store.Database.Work;

/**
 * The numbered steps that lead from an empty file to the newest schema.
 *
 * @param scripts the SQL of step 1, 2, 3 …
 */
record Schema(List<String> scripts) {
    private static final int STEPS = 2;

    /** The schema that this program writes: step n is the resource {@code schema/00n.sql}. */
    static final Schema CURRENT =
            new Schema(IntStream.rangeClosed(1, STEPS).mapToObj(Schema::script).toList());

    Schema {
        scripts = List.copyOf(scripts);
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

    /** The version to which the steps lead, kept in {@code user_version}. */
    int newest() {
        return scripts.size();
    }

    /**
     * Takes the database from its version to the newest, one transaction for each step.
     *
     * @throws StoreException when a step fails or rows would be left pointing at nothing; that step is then undone
     */
    void migrate(Database database) throws StoreException {
        for (int version = database.header().userVersion() + 1; version <= newest(); version++) {
            step(database, version);
        }
    }

    private void step(Database database, int version) throws StoreException {
        database.write(Work.only(connection -> {
            try (Statement statement = connection.createStatement()) {
                statement.executeUpdate(scripts.get(version - 1));
                statement.execute("PRAGMA application_id = " + Header.APPLICATION_ID);
                statement.execute("PRAGMA user_version = " + version);
            }
            requireWholeReferences(database.file(), connection);
        }));
    }

    static void requireWholeReferences(Path file, Connection connection) throws SQLException, StoreException {
        try (Statement statement = connection.createStatement();
                ResultSet violation = statement.executeQuery("PRAGMA foreign_key_check")) {
            if (violation.next()) {
                throw StoreException.damaged(file, "a row of " + violation.getString(1) + " points at nothing");
            }
        }
    }
}
