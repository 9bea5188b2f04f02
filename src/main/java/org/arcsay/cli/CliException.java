package org.arcsay.cli;

/** Ends a command with a message for the user and an exit code. */
final class CliException extends Exception {
    private static final long serialVersionUID = 1L;

    private final int exitCode;

    CliException(int exitCode, String message) {
        super(message);
        this.exitCode = exitCode;
    }

    int exitCode() {
        return exitCode;
    }
}
