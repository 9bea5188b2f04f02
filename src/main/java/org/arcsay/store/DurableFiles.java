package org.arcsay.store;

import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.util.Objects;
import java.util.stream.Stream;
import org.arcsay.store.StoreException.Problem;

/** Files that are complete under their name, or not there at all, whenever the program or the power stops. */
public final class DurableFiles {
    /** The end of names of files that are still being written; what is found under such a name is rubbish. */
    static final String UNFINISHED = ".unfinished";

    private static final boolean FOLDERS_CAN_BE_SYNCED =
            !System.getProperty("os.name").startsWith("Windows");

    private DurableFiles() {}

    /** Fills a new, empty, owner-only file. */
    @FunctionalInterface
    public interface Filling {
        void fill(Path unfinished) throws IOException, StoreException;
    }

    /**
     * Makes a file under a temporary name beside the wanted one, forces it to the disk and then gives it its name in one step.
     *
     * @throws StoreException when that failed or the name is taken; then nothing has that name that had not before
     */
    static void create(Path file, Filling filling) throws StoreException {
        if (Files.exists(file)) {
            throw new StoreException(
                    Problem.REFUSED,
                    "There is a file " + file + " already. It was left as it is. Choose another name.");
        }
        replace(file, filling);
    }

    /** Like {@link #create}, but what had the name before is replaced in the last step. */
    public static void replace(Path file, Filling filling) throws StoreException {
        Path unfinished = file.resolveSibling(file.getFileName() + UNFINISHED);
        try {
            OwnerOnly.createFolder(folderOf(file));
            removeDatabase(unfinished);
            OwnerOnly.createFile(unfinished);
            try {
                filling.fill(unfinished);
                force(unfinished, StandardOpenOption.WRITE);
                Files.move(unfinished, file, StandardCopyOption.ATOMIC_MOVE, StandardCopyOption.REPLACE_EXISTING);
            } catch (IOException | StoreException | RuntimeException e) {
                removeAfter(e, unfinished);
                throw e;
            }
            syncFolder(folderOf(file));
        } catch (IOException e) {
            throw Failures.of(file, e);
        }
    }

    /** The folder that a file lies in, as an absolute path. */
    static Path folderOf(Path file) {
        return Objects.requireNonNull(file.toAbsolutePath().getParent(), () -> file + " is no file");
    }

    /**
     * Removes what interrupted work has left: it may hold readings, and is of no use.
     *
     * @param begin how the names begin
     */
    static void removeUnfinished(Path folder, String begin) throws StoreException {
        if (!Files.isDirectory(folder)) {
            return;
        }
        try (Stream<Path> files = Files.list(folder)) {
            for (Path file : files.toList()) {
                String name = file.getFileName().toString();
                if (name.startsWith(begin) && name.contains(UNFINISHED)) {
                    Files.deleteIfExists(file);
                }
            }
        } catch (IOException e) {
            throw Failures.of(folder, e);
        }
    }

    private static void removeAfter(Exception cause, Path unfinished) {
        try {
            removeDatabase(unfinished);
        } catch (IOException e) {
            cause.addSuppressed(e);
        }
    }

    /** Removes a file and what SQLite may have put beside it. */
    static void removeDatabase(Path file) throws IOException {
        for (Path part : parts(file)) {
            Files.deleteIfExists(part);
        }
    }

    /** The names under which a database is kept, its logs first and the file itself last. */
    static Path[] parts(Path database) {
        return new Path[] {
            log(database), beside(database, "-shm"), rollbackJournal(database), database,
        };
    }

    /** The write-ahead log of a database. */
    static Path log(Path database) {
        return beside(database, "-wal");
    }

    /** What an interrupted change leaves of a database that does not use a write-ahead log yet, such as a restored one. */
    static Path rollbackJournal(Path database) {
        return beside(database, "-journal");
    }

    private static Path beside(Path database, String ending) {
        return database.resolveSibling(database.getFileName() + ending);
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
