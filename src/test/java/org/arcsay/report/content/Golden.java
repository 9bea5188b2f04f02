package org.arcsay.report.content;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;

/** Files that the exported ones must equal. Run the tests with {@code -Dgolden.write=true} to write them anew, then look. */
public final class Golden {
    private static final Path FOLDER = Path.of("src/test/resources/golden");

    private Golden() {}

    public static void assertText(String name, byte[] actual) {
        assertEquals(
                new String(expected(name, actual), StandardCharsets.UTF_8), new String(actual, StandardCharsets.UTF_8));
    }

    /** The kept file, after writing it anew if that was asked for. */
    public static byte[] expected(String name, byte[] actual) {
        Path file = FOLDER.resolve(name);
        try {
            if (Boolean.getBoolean("golden.write")) {
                Files.write(file, actual);
            }
            return Files.readAllBytes(file);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
