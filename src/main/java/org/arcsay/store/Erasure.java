package org.arcsay.store;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.SQLException;
import java.sql.Statement;

/**
 * What erasing a patient took away.
 *
 * @param visits how many visits
 * @param events how many events of their journals
 */
public record Erasure(int visits, int events) {
    private static final String EVENTS =
            "(SELECT event.id FROM event JOIN visit ON visit.id = event.visit WHERE patient = ?)";

    /** Takes the rows of the patient away, children first, inside the transaction of the caller. */
    static Erasure of(Connection connection, long patient) throws SQLException {
        run(connection, "INSERT INTO erasing (patient) VALUES (?)", patient);
        for (String table : new String[] {"seal", "finding_number", "finding", "remark", "reading"}) {
            run(connection, "DELETE FROM " + table + " WHERE event IN " + EVENTS, patient);
        }
        int events = run(connection, "DELETE FROM event WHERE id IN " + EVENTS, patient);
        run(connection, "DELETE FROM protocol WHERE patient = ?", patient);
        int visits = run(connection, "DELETE FROM visit WHERE patient = ?", patient);
        run(connection, "DELETE FROM patient WHERE id = ?", patient);
        run(connection, "DELETE FROM erasing WHERE patient = ?", patient);
        return new Erasure(visits, events);
    }

    private static int run(Connection connection, String sql, long patient) throws SQLException {
        try (PreparedStatement statement = connection.prepareStatement(sql)) {
            statement.setLong(1, patient);
            return statement.executeUpdate();
        }
    }

    /** Rewrites the file so that nothing of the rows is left in unused space or in the log. */
    static void scrub(Database database) throws StoreException {
        database.direct(connection -> {
            try (Statement statement = connection.createStatement()) {
                return statement.execute("VACUUM");
            }
        });
        database.emptyLog();
    }
}
