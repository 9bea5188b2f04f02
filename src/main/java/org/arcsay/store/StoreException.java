package org.arcsay.store;

import java.nio.file.Path;
import org.jspecify.annotations.Nullable;

/** The store could not do what was asked; the message is fit to be shown: what happened and what to do next. */
public final class StoreException extends Exception {
    private static final long serialVersionUID = 1L;

    /** What went wrong, for callers that act on it. */
    public enum Problem {
        /** Another program holds the file for longer than we wait. */
        LOCKED,
        /** Another running copy of this program works with the file. */
        IN_USE,
        /** The file or its folder cannot be written to. */
        NOT_WRITABLE,
        /** The file is not one of our databases. */
        NOT_OURS,
        /** A newer version of the program wrote the file. */
        NEWER,
        /** A change was cut off by a crash; opening the file for writing takes it back. */
        INTERRUPTED,
        /** The content of the file contradicts itself. */
        DAMAGED,
        /** No room is left on the disk. */
        DISK_FULL,
        /** The file is not there. */
        MISSING,
        /** The database does not work in the safe way that we set. */
        UNSAFE,
        /** What was asked does not fit what is stored. */
        REFUSED,
        /** The password does not open the file. */
        WRONG_PASSWORD,
        /** Reading or writing failed for another reason. */
        FAILED
    }

    private final Problem problem;

    StoreException(Problem problem, String message, @Nullable Throwable cause) {
        super(message, cause);
        this.problem = problem;
    }

    StoreException(Problem problem, String message) {
        super(message);
        this.problem = problem;
    }

    static StoreException damaged(Path file, String detail) {
        return new StoreException(
                Problem.DAMAGED,
                "The records file " + file + " is damaged (" + detail + "). Nothing was changed in it; keep it.");
    }

    public Problem problem() {
        return problem;
    }
}
