package org.arcsay.store;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.sql.PreparedStatement;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.arcsay.model.PatientCode;
import org.arcsay.store.Backup.Purpose;
import org.arcsay.store.Database.Connector;

/**
 * Safe for any thread, for one process at a time. The folder with copies of one database.
 *
 * <p>A copy appears under its name only after it was written, checked and forced to the disk.
 */
public final class Backups {
    private static final String REPLACED = "replaced-";

    private final Path folder;

    private Backups(Path folder) {
        this.folder = folder;
    }

    /** The backups of that database, in the folder {@code backups} beside it. */
    public static Backups beside(Path databaseFile) {
        return new Backups(databaseFile.toAbsolutePath().resolveSibling("backups"));
    }

    /**
     * Makes a backup because the user wants one.
     *
     * @throws StoreException when the database is damaged or the copy could not be written; older backups are untouched
     */
    public Backup make(VisitStore store, Instant now) throws StoreException {
        return make(store.database(), now, Purpose.ASKED);
    }

    /**
     * Makes a backup unless the newest good one holds the same, and then lets go of old ones. To be called at the end of each
     * session; of one day only the newest stays.
     */
    public Optional<Backup> keepUp(VisitStore store, Instant now) throws StoreException {
        Extent extent = Extent.of(store.database());
        Optional<Backup> newest = lastGood();
        if (newest.isPresent() && extent.equals(Extent.of(newest.get().file()))) {
            return Optional.empty();
        }
        Backup backup = make(store.database(), now, Purpose.DAILY);
        rotate(backup);
        return Optional.of(backup);
    }

    Backup make(Database database, Instant now, Purpose purpose) throws StoreException {
        DurableFiles.removeUnfinished(folder, "");
        Backup backup = free(now, purpose);
        FullCheck.require(database);
        DurableFiles.create(backup.file(), unfinished -> copy(database, unfinished));
        return backup;
    }

    /** Two backups never share a name, whatever the clock does. */
    private Backup free(Instant now, Purpose purpose) {
        Instant moment = now;
        while (Files.exists(Backup.in(folder, moment, purpose).file())) {
            moment = moment.plusMillis(1);
        }
        return Backup.in(folder, moment, purpose);
    }

    /** Writes one unchanging state of the database into an empty file and checks that it is all there. */
    static void copy(Database database, Path empty) throws StoreException {
        Extent extent = database.direct(connection -> {
            try (PreparedStatement vacuum = connection.prepareStatement("VACUUM INTO ?")) {
                vacuum.setString(1, empty.toString());
                vacuum.execute();
            }
            return Extent.of(connection);
        });
        try (Database copy = Opening.STANDARD.forReading(empty)) {
            copy.requireSound("integrity_check");
            if (!Extent.of(copy).equals(extent)) {
                throw StoreException.damaged(empty, "the copy is not complete");
            }
        }
    }

    private void rotate(Backup justMade) throws StoreException {
        try {
            for (Backup old : Rotation.superfluous(list())) {
                if (!old.equals(justMade)) {
                    Files.deleteIfExists(old.file());
                }
            }
        } catch (IOException e) {
            throw Failures.of(folder, e);
        }
    }

    /** All backups, newest first. */
    public List<Backup> list() throws StoreException {
        try {
            return files().stream()
                    .map(Backup::at)
                    .flatMap(Optional::stream)
                    .sorted(Comparator.comparing(Backup::made).reversed())
                    .toList();
        } catch (IOException e) {
            throw Failures.of(folder, e);
        }
    }

    private List<Path> files() throws IOException {
        if (!Files.isDirectory(folder)) {
            return List.of();
        }
        try (Stream<Path> files = Files.list(folder)) {
            return files.toList();
        }
    }

    /** The newest backup that passes the full check. */
    public Optional<Backup> lastGood() throws StoreException {
        return list().stream().filter(backup -> isGood(backup.file())).findFirst();
    }

    /** Whether a backup passes the full check. */
    public boolean isGood(Backup backup) {
        return isGood(backup.file());
    }

    private static boolean isGood(Path file) {
        try {
            requireGood(file);
            return true;
        } catch (StoreException e) {
            return false;
        }
    }

    private static void requireGood(Path file) throws StoreException {
        try (Database database = Opening.STANDARD.forReading(file)) {
            FullCheck.require(database);
        }
    }

    /** The backups in which a patient is still to be found, as far as they can be read. */
    public List<Backup> holding(PatientCode patient) throws StoreException {
        List<Backup> holding = new ArrayList<>();
        for (Backup backup : list()) {
            if (isGood(backup.file())) {
                try (VisitStore store = VisitStore.openReadOnly(backup.file())) {
                    if (store.knows(patient)) {
                        holding.add(backup);
                    }
                }
            }
        }
        return List.copyOf(holding);
    }

    /**
     * Puts a backup in the place of the database. What was there is kept in a folder beside it.
     *
     * @param backupFile a backup, of this schema or an older one
     * @param databaseFile the database, which must not be open
     * @param now names the folder for what was there
     * @return that folder, or empty when nothing was there
     * @throws StoreException when the backup is not good or the database is open; the database is then as it was
     */
    public static Optional<Path> restore(Path backupFile, Path databaseFile, Instant now) throws StoreException {
        Path file = Opening.real(databaseFile);
        requireGood(backupFile);
        try (InstanceLock lock = InstanceLock.acquire(file)) {
            Optional<Path> aside = setAside(file, now);
            DurableFiles.replace(file, unfinished -> {
                Files.copy(backupFile, unfinished, StandardCopyOption.REPLACE_EXISTING);
                requireGood(unfinished);
                useLog(unfinished);
                removeLog(file);
            });
            return aside;
        }
    }

    /** The folders with what restoring replaced. */
    public List<Path> replaced() throws StoreException {
        Path data = DurableFiles.folderOf(folder);
        if (!Files.isDirectory(data)) {
            return List.of();
        }
        try (Stream<Path> files = Files.list(data)) {
            return files.filter(file -> file.getFileName().toString().startsWith(REPLACED) && Files.isDirectory(file))
                    .sorted()
                    .toList();
        } catch (IOException e) {
            throw Failures.of(data, e);
        }
    }

    private static Optional<Path> setAside(Path file, Instant now) throws StoreException {
        Path aside = file.resolveSibling(REPLACED + Backup.stamp(now));
        boolean any = false;
        try {
            for (Path part : DurableFiles.parts(file)) {
                if (Files.exists(part)) {
                    OwnerOnly.createFolder(aside);
                    DurableFiles.create(
                            aside.resolve(part.getFileName()),
                            copy -> Files.copy(part, copy, StandardCopyOption.REPLACE_EXISTING));
                    any = true;
                }
            }
        } catch (IOException e) {
            throw Failures.of(aside, e);
        }
        return any ? Optional.of(aside) : Optional.empty();
    }

    /** A copy does not use a write-ahead log; the change to it must not be interrupted under the name of the database. */
    private static void useLog(Path copy) throws StoreException {
        try (Database database = Database.forWriting(copy, Connector.DRIVER)) {
            database.emptyLog();
        }
    }

    /** The log of the old file must not be read into the new one. */
    private static void removeLog(Path file) throws IOException {
        for (Path part : DurableFiles.parts(file)) {
            if (!part.equals(file)) {
                Files.deleteIfExists(part);
            }
        }
        DurableFiles.syncFolder(DurableFiles.folderOf(file));
    }
}
