package org.arcsay.recogniser;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.io.InputStream;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.util.Arrays;
import org.junit.jupiter.api.Test;

/** Compared with a file that OpenFst's own tools wrote: one state with 599 loops (see the README beside it). */
final class FstWriterTest {
    private static final int PROPERTIES_AT = 33;
    private static final int WORDS = 599;

    private static byte[] writtenByOpenFst() throws IOException {
        try (InputStream in = FstWriterTest.class.getResourceAsStream("/openfst/loop.fst")) {
            return in.readAllBytes();
        }
    }

    @Test
    void writesWhatOpenFstWrites() throws IOException {
        byte[] expected = writtenByOpenFst();
        FstWriter writer = new FstWriter(1, 0);
        for (int word = WORDS; word > 0; word--) {
            writer.arc(0, word, Math.log(WORDS), 0);
        }
        writer.accept(0);
        byte[] actual = writer.bytes();

        assertEquals(expected.length, actual.length);
        ByteBuffer properties = ByteBuffer.wrap(actual).order(ByteOrder.LITTLE_ENDIAN);
        long claimed = properties.getLong(PROPERTIES_AT);
        long known = ByteBuffer.wrap(expected).order(ByteOrder.LITTLE_ENDIAN).getLong(PROPERTIES_AT);
        assertEquals(claimed, claimed & known, "claims a property that OpenFst does not see");
        properties.putLong(PROPERTIES_AT, known);
        assertRoundedEqually(expected, actual);
    }

    /** The tools read the costs from text with six digits, so the last bits of each may differ. */
    private static void assertRoundedEqually(byte[] expected, byte[] actual) {
        byte[] rounded = Arrays.copyOf(actual, actual.length);
        ByteBuffer theirs = ByteBuffer.wrap(expected).order(ByteOrder.LITTLE_ENDIAN);
        ByteBuffer ours = ByteBuffer.wrap(rounded).order(ByteOrder.LITTLE_ENDIAN);
        int firstArc = actual.length - WORDS * 16;
        for (int cost = firstArc + 8; cost < actual.length; cost += 16) {
            assertEquals(theirs.getFloat(cost), ours.getFloat(cost), 1e-4);
            ours.putFloat(cost, theirs.getFloat(cost));
        }
        assertArrayEquals(expected, rounded);
    }
}
