package org.arcsay.store;

import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * For one thread. The chain of checksums over the journal of one visit, which shows when a disk gives back other bytes than were
 * stored; SQLite itself would not notice a changed digit.
 *
 * <p>A checksum is the SHA-256 of the one before and of the columns below, each as one letter for its type, the length of its
 * text in bytes as four bytes, and its text. Columns that later schemas add are not part of it.
 */
final class Seals implements AutoCloseable {
    private static final String HEAD =
            "SELECT visit.id, code, started_at, plan FROM visit JOIN patient ON patient.id = visit.patient WHERE visit.id = ?";
    private static final List<String> ROWS_OF_EVENT = List.of(
            "SELECT visit, number, kind, at, entry, by_whom, why FROM event WHERE id = ?",
            "SELECT held, replaces, side, site, motion, mode, placement, value_kind, amount, unit, word, words, source,"
                    + " confidence, start_ns, end_ns, grammar, model, rules FROM reading WHERE event = ?",
            "SELECT position, kind, text, score FROM remark WHERE event = ? ORDER BY position",
            "SELECT position, rule, severity, sentence, value_kind, amount, unit, word FROM finding WHERE event = ?"
                    + " ORDER BY position",
            "SELECT finding, position, label, number, unit FROM finding_number WHERE event = ?"
                    + " ORDER BY finding, position");
    private static final String STORED =
            "SELECT event.id, number, digest FROM event LEFT JOIN seal ON seal.event = event.id WHERE visit = ? ORDER BY number";

    private static final String LAST_TWO =
            "SELECT event.id, digest FROM event LEFT JOIN seal ON seal.event = event.id WHERE visit = ?"
                    + " ORDER BY number DESC LIMIT 2";

    private final Connection connection;
    private final long visit;

    private final List<PreparedStatement> rowsOfEvent = new ArrayList<>();

    Seals(Connection connection, long visit) throws SQLException {
        this.connection = connection;
        this.visit = visit;
        for (String rows : ROWS_OF_EVENT) {
            rowsOfEvent.add(connection.prepareStatement(rows));
        }
    }

    /**
     * Adds the checksum of the event that was stored last.
     *
     * @throws IllegalStateException when the one before has no checksum
     */
    void add() throws SQLException {
        try (PreparedStatement query = connection.prepareStatement(LAST_TWO)) {
            query.setLong(1, visit);
            try (ResultSet row = query.executeQuery()) {
                row.next();
                long event = row.getLong(1);
                add(event, row.next() ? row.getBytes(2) : head());
            }
        }
    }

    private void add(long event, byte[] before) throws SQLException {
        if (before == null) {
            throw new IllegalStateException("the event before has no checksum");
        }
        try (PreparedStatement insert = connection.prepareStatement("INSERT INTO seal (event, digest) VALUES (?, ?)")) {
            insert.setLong(1, event);
            insert.setBytes(2, following(before, event));
            insert.executeUpdate();
        }
    }

    /**
     * Computes every checksum of the visit again.
     *
     * @throws IllegalStateException when an event is not as it was stored, or one is missing in between
     */
    void verify() throws SQLException {
        try (PreparedStatement query = connection.prepareStatement(STORED)) {
            query.setLong(1, visit);
            try (ResultSet row = query.executeQuery()) {
                byte[] digest = head();
                for (int number = 1; row.next(); number++) {
                    digest = following(digest, row.getLong(1));
                    if (row.getInt(2) != number || !Arrays.equals(digest, row.getBytes(3))) {
                        throw new IllegalStateException("event " + number + " is not as it was stored");
                    }
                }
            }
        }
    }

    private byte[] head() throws SQLException {
        MessageDigest digest = sha256();
        try (PreparedStatement query = connection.prepareStatement(HEAD)) {
            update(digest, query, visit);
        }
        return digest.digest();
    }

    private byte[] following(byte[] before, long event) throws SQLException {
        MessageDigest digest = sha256();
        digest.update(before);
        for (PreparedStatement query : rowsOfEvent) {
            update(digest, query, event);
        }
        return digest.digest();
    }

    private static void update(MessageDigest digest, PreparedStatement query, long id) throws SQLException {
        query.setLong(1, id);
        try (ResultSet row = query.executeQuery()) {
            int columns = row.getMetaData().getColumnCount();
            while (row.next()) {
                digest.update((byte) 'R');
                for (int column = 1; column <= columns; column++) {
                    update(digest, row.getObject(column));
                }
            }
        }
        digest.update((byte) 'E');
    }

    @Override
    public void close() throws SQLException {
        for (PreparedStatement query : rowsOfEvent) {
            query.close();
        }
    }

    private static void update(MessageDigest digest, Object value) {
        byte[] text = String.valueOf(value).getBytes(StandardCharsets.UTF_8);
        digest.update((byte) type(value));
        digest.update(ByteBuffer.allocate(Integer.BYTES).putInt(text.length).flip());
        digest.update(text);
    }

    private static char type(Object value) {
        if (value == null) {
            return 'N';
        }
        if (value instanceof String) {
            return 'T';
        }
        return value instanceof Double ? 'D' : 'I';
    }

    static MessageDigest sha256() {
        try {
            return MessageDigest.getInstance("SHA-256");
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("every Java has SHA-256", e);
        }
    }
}
