package org.arcsay.grammar;

/** A grammar file cannot be used; the message names the line and is fit to be shown. */
public final class GrammarException extends Exception {
    private static final long serialVersionUID = 1L;

    public GrammarException(String message) {
        super(message);
    }

    GrammarException(int line, String message) {
        super("grammar, line " + line + ": " + message);
    }
}
