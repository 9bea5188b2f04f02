package org.arcsay.store;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import org.arcsay.store.StoreException.Problem;
import org.jspecify.annotations.Nullable;
import org.sqlite.SQLiteConfig;
import org.sqlite.SQLiteConnection;

/** Safe for any thread: calls run one at a time. One open database file and the transactions on it. */
final class Database implements AutoCloseable {
    /** Opens a connection; replaced in tests by one that fails on purpose. */
    @FunctionalInterface
    interface Connector {
        Connector DRIVER = (config, url) -> config.createConnection(url);

        Connection connect(SQLiteConfig config, String url) throws SQLException;
    }

    /** Something done with the connection. */
    @FunctionalInterface
    interface Work<T> {
        T run(Connection connection) throws SQLException, StoreException;

        /** Work that is done for its effect; its result says nothing. */
        static Work<Boolean> only(Step step) {
            return connection -> {
                step.run(connection);
                return true;
            };
        }
    }

    /** Something done with the connection that has no result. */
    @FunctionalInterface
    interface Step {
        void run(Connection connection) throws SQLException, StoreException;
    }

    private final Path file;
    private final boolean writable;
    private final Connector connector;
    private volatile @Nullable Connection connection;

    private Database(Path file, boolean writable, Connector connector) throws StoreException {
        this.file = file;
        this.writable = writable;
        this.connector = connector;
        this.connection = connect();
    }

    static Database forWriting(Path file, Connector connector) throws StoreException {
        return new Database(file, true, connector);
    }

    static Database forReading(Path file, Connector connector) throws StoreException {
        return new Database(file, false, connector);
    }

    private Connection connect() throws StoreException {
        SQLiteConfig config = writable ? Pragmas.forWriting() : Pragmas.forReading();
        try {
            Connection opened = connector.connect(config, "jdbc:sqlite:" + (isFrozen() ? frozenName() : file));
            try {
                Pragmas.complete(opened);
                Pragmas.verify(file, opened, writable);
                return opened;
            } catch (SQLException | StoreException | RuntimeException e) {
                closeAfter(e, opened);
                throw e;
            }
        } catch (SQLException e) {
            throw Failures.of(file, e);
        }
    }

    /**
     * Whether nobody can change the file because it lies where nothing can be written, such as on a disk that the system made
     * read-only after an error. SQLite needs to be told, since it cannot make the files beside it that guard against changes.
     */
    private boolean isFrozen() throws StoreException {
        try {
            Path log = DurableFiles.log(file);
            return !writable
                    && Files.exists(file)
                    && !Files.isWritable(DurableFiles.folderOf(file))
                    && (!Files.exists(log) || Files.size(log) == 0);
        } catch (IOException e) {
            throw Failures.of(file, e);
        }
    }

    /** As described in "Uniform Resource Identifiers" of the documentation of SQLite. */
    private String frozenName() {
        String name = file.toAbsolutePath()
                .toString()
                .replace('\\', '/')
                .replace("%", "%25")
                .replace("#", "%23");
        return "file:" + (name.startsWith("/") ? name : "/" + name) + "?immutable=1";
    }

    Path file() {
        return file;
    }

    /** Runs the work outside any transaction, for statements that begin their own or cannot stand in one. */
    synchronized <T> T direct(Work<T> work) throws StoreException {
        try {
            return work.run(open());
        } catch (SQLException e) {
            throw Failures.of(file, e);
        }
    }

    /** Runs the work on one unchanging state of the file, even while another process writes it. */
    synchronized <T> T read(Work<T> work) throws StoreException {
        return transact("BEGIN", work);
    }

    /** Runs the work in one transaction: all of it is stored when this returns, and nothing of it when this throws. */
    synchronized <T> T write(Work<T> work) throws StoreException {
        if (!writable) {
            throw new StoreException(
                    Problem.NOT_WRITABLE,
                    "The records file " + file + " was opened for looking only. Nothing was stored.");
        }
        return transact("BEGIN IMMEDIATE", work);
    }

    private <T> T transact(String begin, Work<T> work) throws StoreException {
        return direct(open -> {
            try (Statement statement = open.createStatement()) {
                statement.execute(begin);
                try {
                    T result = work.run(open);
                    statement.execute("COMMIT");
                    return result;
                } catch (SQLException | StoreException | RuntimeException e) {
                    undo(statement, e);
                    throw e;
                }
            }
        });
    }

    private Connection open() throws StoreException {
        Connection opened = connection;
        if (opened == null) {
            opened = connect();
            connection = opened;
        }
        return opened;
    }

    /** Rolls back; where even that fails, drops the connection, which has the same effect. */
    private void undo(Statement statement, Exception cause) {
        try {
            statement.execute("ROLLBACK");
        } catch (SQLException e) {
            cause.addSuppressed(e);
            drop(cause);
        }
    }

    private void drop(Exception cause) {
        Connection opened = connection;
        if (opened != null) {
            closeAfter(cause, opened);
        }
        connection = null;
    }

    private static void closeAfter(Exception cause, Connection opened) {
        try {
            opened.close();
        } catch (SQLException e) {
            cause.addSuppressed(e);
        }
    }

    /**
     * Asks SQLite whether the content is sound.
     *
     * @param pragma {@code quick_check} or {@code integrity_check}
     * @throws StoreException when it is not
     */
    void requireSound(String pragma) throws StoreException {
        String answer = direct(open -> {
            try (Statement statement = open.createStatement();
                    ResultSet row = statement.executeQuery("PRAGMA " + pragma + "(1)")) {
                return row.next() ? row.getString(1) : "no answer";
            }
        });
        if (!"ok".equals(answer)) {
            throw StoreException.damaged(file, answer);
        }
    }

    /**
     * Moves everything from the write-ahead log into the file itself. Closing does so too, but keeps silent when it fails.
     *
     * @throws StoreException when the log could not be emptied; nothing is lost then, and the log is still needed
     */
    void emptyLog() throws StoreException {
        boolean busy = direct(open -> {
            try (Statement statement = open.createStatement();
                    ResultSet row = statement.executeQuery("PRAGMA wal_checkpoint(TRUNCATE)")) {
                return row.next() && row.getInt(1) != 0;
            }
        });
        if (busy) {
            throw new StoreException(
                    Problem.LOCKED, "Another program reads the records file " + file + ". Close it and try again.");
        }
    }

    /** The header as SQLite sees it, with what is still in the write-ahead log. */
    Header header() throws StoreException {
        return read(open ->
                new Header((int) Pragmas.number(open, "application_id"), (int) Pragmas.number(open, "user_version")));
    }

    /** Ends what another thread is doing with the file, as soon as SQLite can; it fails there. */
    void interrupt() {
        try {
            if (connection instanceof SQLiteConnection running) {
                running.getDatabase().interrupt();
            }
        } catch (SQLException e) {
            // It was closed meanwhile, so that nothing runs any more.
        }
    }

    /** Closes the file after a failure that matters more than one here. */
    void closeAfter(Exception cause) {
        try {
            close();
        } catch (StoreException e) {
            cause.addSuppressed(e);
        }
    }

    @Override
    public synchronized void close() throws StoreException {
        if (connection == null) {
            return;
        }
        try {
            connection.close();
            connection = null;
        } catch (SQLException e) {
            throw Failures.of(file, e);
        }
    }
}
