package org.arcsay.feedback;

import org.jspecify.annotations.Nullable;

/** Answers cannot sound; the message is fit to be shown: what happened and what to do next. */
public final class SpeakerException extends Exception {
    private static final long serialVersionUID = 1L;

    public SpeakerException(String message, @Nullable Throwable cause) {
        super(message, cause);
    }
}
