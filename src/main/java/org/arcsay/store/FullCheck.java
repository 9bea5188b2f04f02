package org.arcsay.store;

import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.DateTimeException;
import java.util.ArrayList;
import java.util.List;
import org.arcsay.store.Database.Work;

/** Looks through a whole records file: its pages and indexes, what its rows point at, and the checksum of every event. */
final class FullCheck {
    private FullCheck() {}

    /**
     * @throws StoreException when anything is not as it was stored
     */
    static void require(Database database) throws StoreException {
        database.requireSound("integrity_check");
        database.read(Work.only(connection -> {
            Schema.requireWholeReferences(database.file(), connection);
            for (long visit : ids(connection, "visit")) {
                requireAsStored(database, connection, visit);
            }
            for (long patient : ids(connection, "patient")) {
                requireProtocols(database, connection, patient);
            }
        }));
    }

    private static List<Long> ids(Connection connection, String table) throws SQLException {
        List<Long> ids = new ArrayList<>();
        try (Statement statement = connection.createStatement();
                ResultSet row = statement.executeQuery("SELECT id FROM " + table + " ORDER BY id")) {
            while (row.next()) {
                ids.add(row.getLong(1));
            }
        }
        return ids;
    }

    private static void requireProtocols(Database database, Connection connection, long patient)
            throws SQLException, StoreException {
        try {
            new ProtocolRows(connection, patient).all();
        } catch (IllegalArgumentException | DateTimeException e) {
            StoreException damaged =
                    StoreException.damaged(database.file(), "patient " + patient + ": " + e.getMessage());
            damaged.initCause(e);
            throw damaged;
        }
    }

    private static void requireAsStored(Database database, Connection connection, long visit)
            throws SQLException, StoreException {
        try (Seals seals = new Seals(connection, visit)) {
            seals.verify();
        } catch (IllegalStateException e) {
            StoreException damaged = StoreException.damaged(database.file(), "visit " + visit + ": " + e.getMessage());
            damaged.initCause(e);
            throw damaged;
        }
    }
}
