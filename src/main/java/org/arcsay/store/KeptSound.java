package org.arcsay.store;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * Safe for any thread. The recordings of visits in the data folder: none unless the user asked for one, readable by their owner
 * only, and there until they are purged. They are in no backup and no export.
 *
 * @param folder where they lie
 */
public record KeptSound(Path folder) {
    /**
     * Makes the empty file for the recording of a visit.
     *
     * @throws StoreException when it cannot be made or is there already
     */
    public Path begin(long visit) throws StoreException {
        Path file = file(visit);
        try {
            OwnerOnly.createFolder(folder);
            OwnerOnly.createFile(file);
            return file;
        } catch (IOException e) {
            throw Failures.of(file, e);
        }
    }

    /** The recording of a visit, if one is kept. */
    public Optional<Path> of(long visit) {
        return Optional.of(file(visit)).filter(Files::exists);
    }

    /** All recordings, in no special order. */
    public List<Path> all() throws StoreException {
        if (!Files.isDirectory(folder)) {
            return List.of();
        }
        try (Stream<Path> files = Files.list(folder)) {
            return files.filter(KeptSound::isRecording).toList();
        } catch (IOException e) {
            throw Failures.of(folder, e);
        }
    }

    private static boolean isRecording(Path file) {
        return String.valueOf(file.getFileName()).matches("visit-\\d+\\.wav");
    }

    /**
     * Removes the recording of a visit for good.
     *
     * @return whether there was one
     */
    public boolean purge(long visit) throws StoreException {
        return purge(file(visit));
    }

    /**
     * Removes every recording for good.
     *
     * @return how many there were
     */
    public int purgeAll() throws StoreException {
        int purged = 0;
        for (Path recording : all()) {
            purged += purge(recording) ? 1 : 0;
        }
        return purged;
    }

    private boolean purge(Path recording) throws StoreException {
        try {
            boolean there = Files.deleteIfExists(recording);
            if (there) {
                DurableFiles.syncFolder(folder);
            }
            return there;
        } catch (IOException e) {
            throw Failures.of(recording, e);
        }
    }

    private Path file(long visit) {
        return folder.resolve("visit-" + visit + ".wav");
    }
}
