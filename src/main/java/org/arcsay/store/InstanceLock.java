package org.arcsay.store;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.channels.FileLock;
import java.nio.channels.OverlappingFileLockException;
import java.nio.charset.StandardCharsets;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.time.OffsetDateTime;
import java.time.temporal.ChronoUnit;
import org.arcsay.store.StoreException.Problem;
import org.jspecify.annotations.Nullable;

/**
 * Safe for any thread. Holds the right to write one database, for one process at a time; the operating system gives it back
 * when the process ends, however it ends. The lock file tells others who holds it.
 */
final class InstanceLock implements AutoCloseable {
    /** Far behind the text, so that others can read it on systems where a locked range cannot be read. */
    private static final long LOCKED_BYTE = Long.MAX_VALUE - 1;

    private static final int LONGEST_NOTE = 200;

    private final FileChannel channel;
    private final FileLock lock;

    private InstanceLock(FileChannel channel, FileLock lock) {
        this.channel = channel;
        this.lock = lock;
    }

    static Path fileFor(Path database) {
        return database.resolveSibling(database.getFileName() + ".lock");
    }

    /**
     * @throws StoreException when another process, or another part of this one, works with the database
     */
    static InstanceLock acquire(Path database) throws StoreException {
        Path file = fileFor(database);
        try {
            OwnerOnly.createFolder(DurableFiles.folderOf(file));
            if (!Files.exists(file)) {
                createUnlessOtherDid(file);
            }
            return acquire(database, FileChannel.open(file, StandardOpenOption.READ, StandardOpenOption.WRITE));
        } catch (IOException e) {
            throw Failures.of(file, e);
        }
    }

    private static InstanceLock acquire(Path database, FileChannel channel) throws IOException, StoreException {
        try {
            FileLock lock = tryLock(channel);
            if (lock == null) {
                throw inUse(database, note(channel));
            }
            write(
                    channel,
                    "process " + ProcessHandle.current().pid() + ", since "
                            + OffsetDateTime.now().truncatedTo(ChronoUnit.SECONDS));
            return new InstanceLock(channel, lock);
        } catch (IOException | StoreException | RuntimeException e) {
            channel.close();
            throw e;
        }
    }

    private static void createUnlessOtherDid(Path file) throws IOException {
        try {
            OwnerOnly.createFile(file);
        } catch (FileAlreadyExistsException e) {
            // another process was faster; the lock decides which of us works with it
        }
    }

    private static @Nullable FileLock tryLock(FileChannel channel) throws IOException {
        try {
            return channel.tryLock(LOCKED_BYTE, 1, false);
        } catch (OverlappingFileLockException e) {
            return null;
        }
    }

    private static StoreException inUse(Path database, String holder) {
        return new StoreException(
                Problem.IN_USE,
                "The records file " + database + " is already open in another window or program of ours ("
                        + (holder.isEmpty() ? "holder unknown" : holder)
                        + "). Close that one first, or look at the records read-only.");
    }

    private static String note(FileChannel channel) throws IOException {
        ByteBuffer bytes = ByteBuffer.allocate(LONGEST_NOTE);
        channel.read(bytes, 0);
        return new String(bytes.array(), 0, bytes.position(), StandardCharsets.UTF_8).strip();
    }

    private static void write(FileChannel channel, String note) throws IOException {
        channel.truncate(0);
        channel.write(ByteBuffer.wrap(note.getBytes(StandardCharsets.UTF_8)), 0);
    }

    /** Gives the right back after a failure that matters more than one here. */
    void closeAfter(Exception cause) {
        try {
            close();
        } catch (StoreException e) {
            cause.addSuppressed(e);
        }
    }

    /** Gives the right back. The file stays: deleting it could take the lock from a process that just got it. */
    @Override
    public void close() throws StoreException {
        try (channel) {
            channel.truncate(0);
            lock.release();
        } catch (IOException e) {
            throw new StoreException(Problem.FAILED, "The lock on the records file could not be given back.", e);
        }
    }
}
