package org.arcsay.audio;

/** Sound that cannot be read. The message is for the user: what happened and what to do next. */
public final class AudioException extends Exception {
    private static final long serialVersionUID = 1L;

    public AudioException(String message) {
        super(message);
    }

    public AudioException(String message, Throwable cause) {
        super(message, cause);
    }
}
