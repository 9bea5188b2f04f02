package org.arcsay.review;

import org.jspecify.annotations.Nullable;

/** Something asked for on the start screen could not be done; the message says why and what to do next. */
public final class HomeException extends Exception {
    private static final long serialVersionUID = 1L;

    public HomeException(String message, @Nullable Throwable cause) {
        super(message, cause);
    }
}
