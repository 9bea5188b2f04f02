package org.arcsay.tables;

/** A table cannot be used; the message names the file, the line and what to change. */
public final class TableException extends RuntimeException {
    private static final long serialVersionUID = 1L;

    public TableException(String message) {
        super(message);
    }

    public TableException(String message, Throwable cause) {
        super(message, cause);
    }
}
