package org.arcsay.recogniser;

/** A speech model that cannot be used. The message is for the user: what is wrong and what to do next. */
public final class ModelException extends Exception {
    private static final long serialVersionUID = 1L;

    public ModelException(String message) {
        super(message);
    }

    public ModelException(String message, Throwable cause) {
        super(message, cause);
    }
}
