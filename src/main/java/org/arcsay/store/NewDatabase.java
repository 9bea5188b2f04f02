package org.arcsay.store;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;

/** Makes an empty database: complete under its name, or not there at all. */
final class NewDatabase {
    private NewDatabase() {}

    static void create(Path file, Database.Connector connector) throws StoreException {
        Path unfinished = file.resolveSibling(file.getFileName() + ".new");
        try {
            OwnerOnly.createFolder(file.toAbsolutePath().getParent());
            remove(unfinished);
            OwnerOnly.createFile(unfinished);
            try (Database database = Database.forWriting(unfinished, connector)) {
                database.direct(connection -> {
                    Schema.migrate(file, connection);
                    return null;
                });
            }
            DurableFiles.moveIntoPlace(unfinished, file);
        } catch (IOException e) {
            throw Failures.of(file, e);
        }
    }

    private static void remove(Path unfinished) throws IOException {
        for (String suffix : new String[] {"", "-wal", "-shm"}) {
            Files.deleteIfExists(unfinished.resolveSibling(unfinished.getFileName() + suffix));
        }
    }
}
