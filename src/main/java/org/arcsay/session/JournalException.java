package org.arcsay.session;

/** An event could not be stored; the message is fit to be shown: what happened and what to do next. */
public final class JournalException extends Exception {
    private static final long serialVersionUID = 1L;

    public JournalException(String message, Throwable cause) {
        super(message, cause);
    }
}
