package org.arcsay.store;

import java.io.IOException;
import java.io.InputStream;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import org.arcsay.store.StoreException.Problem;

/**
 * The first 100 bytes of a database file (SQLite, "Database File Format", section 1.3), read without opening it as a database.
 *
 * @param applicationId whose file it is, at offset 68
 * @param userVersion version of the schema when the header was last written, at offset 60
 */
record Header(int applicationId, int userVersion) {
    /** "ARCS" as a number. */
    static final int APPLICATION_ID = 0x41524353;

    private static final int LENGTH = 100;
    private static final byte[] MAGIC = "SQLite format 3\0".getBytes(StandardCharsets.US_ASCII);

    /**
     * @throws StoreException when the file is missing, empty, or no database of ours
     */
    static Header read(Path file) throws StoreException {
        if (Files.isDirectory(file)) {
            throw new StoreException(Problem.NOT_OURS, file + " is a folder, not a records file. Name a file in it.");
        }
        byte[] bytes = firstBytes(file);
        if (bytes.length == 0) {
            throw StoreException.damaged(file, "it is empty");
        }
        if (bytes.length < LENGTH || !Arrays.equals(MAGIC, Arrays.copyOf(bytes, MAGIC.length))) {
            throw Failures.notOurs(file, null);
        }
        ByteBuffer buffer = ByteBuffer.wrap(bytes);
        return new Header(buffer.getInt(68), buffer.getInt(60));
    }

    private static byte[] firstBytes(Path file) throws StoreException {
        try (InputStream in = Files.newInputStream(file)) {
            return in.readNBytes(LENGTH);
        } catch (IOException e) {
            throw Failures.of(file, e);
        }
    }
}
