package org.arcsay.recogniser;

/** The native recogniser failed; nothing the user said or typed causes it. The message is for the user. */
public final class RecogniserException extends RuntimeException {
    private static final long serialVersionUID = 1L;

    public RecogniserException(String message) {
        super(message);
    }

    public RecogniserException(String message, Throwable cause) {
        super(message, cause);
    }
}
