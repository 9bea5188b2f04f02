package org.arcsay.evaluate;

/** The list of recordings cannot be used; the message names the line and is fit to be shown. */
public final class EvaluationException extends Exception {
    private static final long serialVersionUID = 1L;

    EvaluationException(String message) {
        super(message);
    }
}
