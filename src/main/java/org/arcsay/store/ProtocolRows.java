package org.arcsay.store;

import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.arcsay.model.PatientProtocol;
import org.arcsay.model.ProtocolVersion;

/** For one thread, inside one transaction. The protocols of one patient, oldest first, chained by checksums as the journal is. */
final class ProtocolRows {
    private static final String ALL =
            "SELECT number, at, by_whom, text, digest, code FROM protocol JOIN patient ON patient.id = protocol.patient"
                    + " WHERE patient = ? ORDER BY number";

    private final Connection connection;
    private final long patient;

    ProtocolRows(Connection connection, long patient) {
        this.connection = connection;
        this.patient = patient;
    }

    /**
     * All that were set; none in a file of the first schema, which is opened for looking only.
     *
     * @throws IllegalArgumentException when one of them is not as it was stored
     */
    List<ProtocolVersion> all() throws SQLException {
        List<ProtocolVersion> versions = new ArrayList<>();
        if (!known(connection)) {
            return versions;
        }
        try (PreparedStatement query = connection.prepareStatement(ALL)) {
            query.setLong(1, patient);
            try (ResultSet row = query.executeQuery()) {
                byte[] before = new byte[0];
                while (row.next()) {
                    String[] cells = {
                        row.getString(6), row.getString(1), row.getString(2), row.getString(3), row.getString(4)
                    };
                    before = digest(before, cells);
                    if (row.getInt(1) != versions.size() + 1 || !Arrays.equals(before, row.getBytes(5))) {
                        throw new IllegalArgumentException("a protocol is not as it was stored");
                    }
                    versions.add(new ProtocolVersion(
                            OffsetDateTime.parse(cells[2]), cells[3], PatientProtocol.parse(cells[4])));
                }
            }
        }
        return List.copyOf(versions);
    }

    /** The one in force at a moment: the last one that was set by then. */
    static Optional<ProtocolVersion> at(List<ProtocolVersion> versions, OffsetDateTime moment) {
        return versions.stream()
                .filter(version -> !version.at().isAfter(moment))
                .reduce((older, newer) -> newer);
    }

    void add(String code, ProtocolVersion version) throws SQLException {
        String[] cells = {
            code,
            String.valueOf(all().size() + 1),
            EventWriter.timestamp(version.at()),
            version.by(),
            String.join("; ", version.protocol().statements())
        };
        try (PreparedStatement insert = connection.prepareStatement(
                "INSERT INTO protocol (patient, number, at, by_whom, text, digest) VALUES (?, ?, ?, ?, ?, ?)")) {
            insert.setLong(1, patient);
            insert.setInt(2, Integer.parseInt(cells[1]));
            insert.setString(3, cells[2]);
            insert.setString(4, cells[3]);
            insert.setString(5, cells[4]);
            insert.setBytes(6, digest(lastDigest(), cells));
            insert.executeUpdate();
        }
    }

    private byte[] lastDigest() throws SQLException {
        try (PreparedStatement query = connection.prepareStatement(
                "SELECT digest FROM protocol WHERE patient = ? ORDER BY number DESC LIMIT 1")) {
            query.setLong(1, patient);
            try (ResultSet row = query.executeQuery()) {
                return row.next() ? row.getBytes(1) : new byte[0];
            }
        }
    }

    /** Whether the file has the table at all. */
    static boolean known(Connection connection) throws SQLException {
        try (PreparedStatement query = connection.prepareStatement(
                        "SELECT 1 FROM sqlite_master WHERE type = 'table' AND name = 'protocol'");
                ResultSet row = query.executeQuery()) {
            return row.next();
        }
    }

    private static byte[] digest(byte[] before, String[] cells) {
        MessageDigest digest = Seals.sha256();
        digest.update(before);
        for (String cell : cells) {
            byte[] bytes = cell.getBytes(StandardCharsets.UTF_8);
            digest.update(
                    ByteBuffer.allocate(Integer.BYTES).putInt(bytes.length).flip());
            digest.update(bytes);
        }
        return digest.digest();
    }
}
