package org.arcsay.recogniser;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** Only a whole process shows what native code writes past Java. */
@Timeout(120)
final class QuietProcessTest {
    @TempDir
    Path temporary;

    @Test
    void nativeCodeWritesNothingOfItsOwn() throws Exception {
        Path out = temporary.resolve("out");
        Path err = temporary.resolve("err");
        ProcessBuilder benchmark = new ProcessBuilder(
                        Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                        "-cp",
                        System.getProperty("java.class.path"),
                        RecogniserBenchmark.class.getName(),
                        Recordings.FOLDER.resolve("joe-joe-000.wav").toString(),
                        "1")
                .redirectOutput(out.toFile())
                .redirectError(err.toFile());
        benchmark.environment().put("XDG_CACHE_HOME", temporary.toString());
        assertEquals(0, benchmark.start().waitFor());
        assertEquals("", Files.readString(err));
        assertEquals(2, Files.readAllLines(out).size(), "its own two lines and nothing else");
        assertTrue(Files.readString(out).contains("1 utterances"));
    }
}
