package org.arcsay.store;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import org.arcsay.store.Database.Connector;
import org.arcsay.store.StoreException.Problem;

/**
 * How a database file is opened.
 *
 * @param connector makes connections
 * @param schema the schema to bring the file to
 * @param clock names the backup that is made before a change of the schema
 * @param small bytes up to which a file is looked through before it is opened for writing; a larger one meanwhile
 */
record Opening(Connector connector, Schema schema, Clock clock, long small) {
    /** Some two thousand visits, looked through in a small part of a second. */
    static final long SMALL = 32 << 20;

    static final Opening STANDARD = new Opening(Connector.DRIVER, Schema.CURRENT, Clock.systemUTC(), SMALL);

    /** Whether looking through the file would keep its user waiting. */
    boolean isLarge(Path file) throws StoreException {
        try {
            return Files.exists(file) && Files.size(file) > small;
        } catch (IOException e) {
            throw Failures.of(file, e);
        }
    }

    /**
     * Opens for writing a file that is locked by us; creates it or brings it up to date first.
     *
     * @param large whether its pages are looked through later, before anything is written
     */
    Database forWriting(Path file, boolean large) throws StoreException {
        if (Files.exists(file)) {
            requireSound(file, large);
        } else {
            create(file);
        }
        Database database = Database.forWriting(file, connector);
        try {
            if (database.header().userVersion() < schema.newest()) {
                Backups.beside(file).make(database, clock.instant(), Backup.Purpose.SCHEMA);
                schema.migrate(database);
            }
            return database;
        } catch (StoreException | RuntimeException e) {
            database.closeAfter(e);
            throw e;
        }
    }

    Database forReading(Path file) throws StoreException {
        requireUsable(Header.read(file), file);
        Database database = Database.forReading(file, connector);
        try {
            requireUsable(database.header(), file);
            return database;
        } catch (StoreException | RuntimeException e) {
            database.closeAfter(e);
            throw e;
        }
    }

    private void create(Path file) throws StoreException {
        if (Files.exists(DurableFiles.log(file))) {
            throw StoreException.damaged(file, "it is gone, but its log is still there");
        }
        DurableFiles.create(file, unfinished -> {
            try (Database database = Database.forWriting(unfinished, connector)) {
                schema.migrate(database);
                database.emptyLog();
            }
            requireUsable(Header.read(unfinished), unfinished);
        });
    }

    /** Lets SQLite undo a change that a crash cut off, which only a connection that may write can do, and looks again. */
    private void requireSound(Path file, boolean large) throws StoreException {
        try {
            look(file, large);
        } catch (StoreException e) {
            if (e.problem() != Problem.INTERRUPTED) {
                throw e;
            }
            Database.forWriting(file, connector).close();
            look(file, large);
        }
    }

    /** Looks at the file without being able to change it. */
    private void look(Path file, boolean large) throws StoreException {
        try (Database looked = forReading(file)) {
            if (!large) {
                looked.requireSound("quick_check");
            }
        }
    }

    private void requireUsable(Header header, Path file) throws StoreException {
        if (header.applicationId() != Header.APPLICATION_ID) {
            throw Failures.notOurs(file, null);
        }
        if (header.userVersion() > schema.newest()) {
            throw new StoreException(
                    Problem.NEWER,
                    "The records file " + file + " was written by a newer version of this program (schema "
                            + header.userVersion() + ", known up to " + schema.newest()
                            + "). It was left untouched. Install the newer version to open it.");
        }
        if (header.userVersion() < 1) {
            throw StoreException.damaged(file, "it has no schema version");
        }
    }

    /** The file behind links, so that two names of it meet in one lock. */
    static Path real(Path file) throws StoreException {
        Path absolute = file.toAbsolutePath().normalize();
        if (absolute.toString().contains("?")) {
            throw new StoreException(
                    Problem.REFUSED, "The records file " + file + " has a '?' in its name. Choose another folder.");
        }
        try {
            Path folder = DurableFiles.folderOf(absolute);
            if (Files.exists(absolute)) {
                return absolute.toRealPath();
            }
            return Files.exists(folder) ? folder.toRealPath().resolve(absolute.getFileName()) : absolute;
        } catch (IOException e) {
            throw Failures.of(file, e);
        }
    }
}
