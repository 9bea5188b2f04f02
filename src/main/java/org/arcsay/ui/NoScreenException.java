package org.arcsay.ui;

/** No window can be shown here; the message says what to do and is fit to be shown. */
public final class NoScreenException extends Exception {
    private static final long serialVersionUID = 1L;

    NoScreenException(String message, Throwable cause) {
        super(message, cause);
    }
}
