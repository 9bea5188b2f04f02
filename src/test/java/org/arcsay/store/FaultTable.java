package org.arcsay.store;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;

/**
 * Safe for any thread. One row a kind of fault: what was done, how often, what was lost, what the user saw. Each row is printed and
 * kept as a file in {@code target/faults}, so that the table of docs/records.md is what {@code cat target/faults/*} shows.
 */
public final class FaultTable {
    private static final Path FOLDER = Path.of("target", "faults");

    private FaultTable() {}

    /**
     * @param key file name of the row
     * @param lost readings that had been announced and are gone
     */
    public static void row(String key, String fault, int injected, int lost, String saw) throws IOException {
        String row = "| " + fault + " | " + injected + " | " + lost + " | " + saw + " |";
        System.out.println(row);
        Files.createDirectories(FOLDER);
        Files.writeString(FOLDER.resolve(key), row + System.lineSeparator());
    }
}
