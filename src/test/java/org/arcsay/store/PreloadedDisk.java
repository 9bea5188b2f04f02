package org.arcsay.store;

import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.File;
import java.nio.file.Path;
import java.util.Map;
import java.util.concurrent.TimeUnit;

/** The library of {@code src/test/c/disk.c}, which stands between a process and its disk. Linux with a C compiler only. */
record PreloadedDisk(Path library) {

    /** Compiles it, or skips the test with the reason. */
    static PreloadedDisk compile(Path folder) throws Exception {
        assumeTrue(System.getProperty("os.name").equals("Linux"), "needs LD_PRELOAD of Linux");
        assumeTrue(
                System.getenv("PATH")
                        .lines()
                        .flatMap(path -> java.util.Arrays.stream(path.split(File.pathSeparator)))
                        .anyMatch(path -> new File(path, "cc").canExecute()),
                "needs the C compiler cc");
        Path library = folder.resolve("disk.so");
        Process compiler = new ProcessBuilder(
                        "cc", "-O1", "-shared", "-fPIC", "-o", library.toString(), "src/test/c/disk.c", "-ldl")
                .inheritIO()
                .start();
        if (!compiler.waitFor(60, TimeUnit.SECONDS) || compiler.exitValue() != 0) {
            throw new IllegalStateException("src/test/c/disk.c does not compile");
        }
        return new PreloadedDisk(library);
    }

    /** What a process writes below the folder goes into the log. */
    Map<String, String> recording(Path folder, Path log) {
        return Map.of("LD_PRELOAD", library.toString(), "DISK_FOLDER", folder.toString(), "DISK_LOG", log.toString());
    }

    /** The write or force below the folder whose number stands in the file fails. */
    Map<String, String> failing(Path folder, Path number) {
        return Map.of(
                "LD_PRELOAD", library.toString(), "DISK_FOLDER", folder.toString(), "DISK_FAIL", number.toString());
    }
}
