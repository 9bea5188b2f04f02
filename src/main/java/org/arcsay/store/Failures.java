package org.arcsay.store;

import java.io.IOException;
import java.nio.file.AccessDeniedException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.sql.SQLException;
import java.util.Locale;
import org.arcsay.store.StoreException.Problem;
import org.jspecify.annotations.Nullable;
import org.sqlite.SQLiteErrorCode;
import org.sqlite.SQLiteException;

/** Turns technical failures into messages for people. */
final class Failures {
    private static final int PRIMARY_CODE = 0xff;
    private static final long SMALLEST_ROOM = 64 << 10;

    private Failures() {}

    static StoreException of(Path file, SQLException cause) {
        if (cause instanceof SQLiteException exact
                && exact.getResultCode() == SQLiteErrorCode.SQLITE_READONLY_ROLLBACK) {
            return interrupted(file, cause);
        }
        SQLiteErrorCode code = SQLiteErrorCode.getErrorCode(cause.getErrorCode() & PRIMARY_CODE);
        return switch (code) {
            case SQLITE_BUSY, SQLITE_LOCKED ->
                new StoreException(
                        Problem.LOCKED,
                        "Another program is using the records file " + file
                                + ". Nothing was stored. Close the other program and try again.",
                        cause);
            case SQLITE_READONLY, SQLITE_PERM, SQLITE_AUTH -> notWritable(file, cause);
            case SQLITE_CANTOPEN ->
                new StoreException(
                        Problem.NOT_WRITABLE,
                        "The records file " + file + " cannot be opened. "
                                + "Check that its folder exists and that you may write to it.",
                        cause);
            case SQLITE_NOTADB -> notOurs(file, cause);
            case SQLITE_CORRUPT -> damaged(file, cause);
            case SQLITE_FULL -> diskFull(file, cause);
            case SQLITE_CONSTRAINT, SQLITE_MISMATCH ->
                new StoreException(
                        Problem.REFUSED,
                        "The records file " + file + " refused the entry because it breaks a rule of the records. "
                                + "Nothing was stored. Say or type the reading again.",
                        cause);
            default -> isFull(file) ? diskFull(file, cause) : failed(file, cause);
        };
    }

    static StoreException of(Path file, IOException cause) {
        if (cause instanceof AccessDeniedException || mentions(cause, "read-only")) {
            return notWritable(file, cause);
        }
        if (cause instanceof NoSuchFileException) {
            return missing(file, cause);
        }
        return mentions(cause, "no space") || mentions(cause, "not enough space")
                ? diskFull(file, cause)
                : failed(file, cause);
    }

    static StoreException missing(Path file, Throwable cause) {
        return new StoreException(
                Problem.MISSING, "There is no file " + file + ". Check the name and the folder.", cause);
    }

    static StoreException notOurs(Path file, @Nullable Throwable cause) {
        return new StoreException(
                Problem.NOT_OURS,
                file + " is not a records file of this program. It was left untouched. "
                        + "Choose another file or data folder, or move this one away.",
                cause);
    }

    private static StoreException damaged(Path file, Throwable cause) {
        StoreException exception = StoreException.damaged(file, "its content contradicts itself");
        exception.initCause(cause);
        return exception;
    }

    private static StoreException interrupted(Path file, SQLException cause) {
        return new StoreException(
                Problem.INTERRUPTED,
                "The last change of the records file " + file + " was interrupted and has to be taken back first. "
                        + "Open the file once for writing, for example with a capture or a review; "
                        + "everything stored before is kept.",
                cause);
    }

    private static StoreException notWritable(Path file, Throwable cause) {
        return new StoreException(
                Problem.NOT_WRITABLE,
                file + " cannot be written to. Nothing was stored. "
                        + "Check the permissions of the file and its folder, or choose another data folder.",
                cause);
    }

    private static StoreException diskFull(Path file, Throwable cause) {
        return new StoreException(
                Problem.DISK_FULL,
                "There is no room left to write " + file
                        + ". Nothing was stored. Free some space, then say or type the " + "reading again.",
                cause);
    }

    private static StoreException failed(Path file, Throwable cause) {
        return new StoreException(
                Problem.FAILED,
                "Reading or writing " + file + " failed. Nothing was stored by this step. "
                        + "Check the disk, start the program again and look at the last entries.",
                cause);
    }

    /** On a full disk SQLite cannot even make the file through which its readers share a log, and calls that another failure. */
    private static boolean isFull(Path file) {
        try {
            return Files.getFileStore(file).getUsableSpace() < SMALLEST_ROOM;
        } catch (IOException e) {
            return false;
        }
    }

    private static boolean mentions(IOException cause, String words) {
        String message = cause.getMessage();
        return message != null && message.toLowerCase(Locale.ROOT).contains(words);
    }
}
