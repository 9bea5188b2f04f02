package org.arcsay.store;

import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.Arrays;
import java.util.List;

/**
 * For one thread. The chain of checksums over the journal of one visit, which shows when a disk gives back other bytes than were
 * stored; SQLite itself would not notice a changed digit.
 *
 * <p>A checksum is the SHA-256 of the one before and of the columns below, each as one letter for its type, the length of its
 * text in bytes as four bytes, and its text. Columns that later schemas add are not part of it.
 */
final class Seals {
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

    private final Connection connection;
    private final long visit;

    Seals(Connection connection, long visit) {
        this.connection = connection;
        this.visit = visit;
    }

    /** Adds the checksum of the event that was stored last. */
    void add() throws SQLException {
        long event = 0;
        byte[] before = null;
        try (PreparedStatement query = connection.prepareStatement(
                "SELECT event.id, digest FROM event LEFT JOIN seal ON seal.event = event.id WHERE visit = ?"
                        + " ORDER BY number DESC LIMIT 2")) {
            query.setLong(1, visit);
            try (ResultSet row = query.executeQuery()) {
                row.next();
                event = row.getLong(1);
                before = row.next() ? row.getBytes(2) : head();
            }
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
        update(digest, HEAD, visit);
        return digest.digest();
    }

    private byte[] following(byte[] before, long event) throws SQLException {
        MessageDigest digest = sha256();
        digest.update(before);
        for (String rows : ROWS_OF_EVENT) {
            update(digest, rows, event);
        }
        return digest.digest();
    }

    private void update(MessageDigest digest, String rows, long id) throws SQLException {
        try (PreparedStatement query = connection.prepareStatement(rows)) {
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
        }
        digest.update((byte) 'E');
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

    private static MessageDigest sha256() {
        try {
            return MessageDigest.getInstance("SHA-256");
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("every Java has SHA-256", e);
        }
    }
}
