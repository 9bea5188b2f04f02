package org.arcsay.store;

import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;

/** Steps that survive a loss of power once they returned. */
final class DurableFiles {
    private static final boolean FOLDERS_CAN_BE_SYNCED =
            !System.getProperty("os.name").startsWith("Windows");

    private DurableFiles() {}

    /** Forces the finished file to the disk, then gives it its name in one step, replacing what had that name. */
    static void moveIntoPlace(Path finished, Path name) throws IOException {
        force(finished, StandardOpenOption.WRITE);
        Files.move(finished, name, StandardCopyOption.ATOMIC_MOVE, StandardCopyOption.REPLACE_EXISTING);
        syncFolder(name.toAbsolutePath().getParent());
    }

    /** Makes names that were given or taken away in the folder permanent. */
    static void syncFolder(Path folder) throws IOException {
        if (FOLDERS_CAN_BE_SYNCED) {
            force(folder, StandardOpenOption.READ);
        }
    }

    private static void force(Path path, StandardOpenOption option) throws IOException {
        try (FileChannel channel = FileChannel.open(path, option)) {
            channel.force(true);
        }
    }
}
