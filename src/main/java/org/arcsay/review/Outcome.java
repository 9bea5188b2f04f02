package org.arcsay.review;

/** What became of something the reviewer asked for. Every message is fit to be shown as it stands. */
public sealed interface Outcome {
    String message();

    /** It was done and is stored. */
    record Done(String message) implements Outcome {}

    /** It was not done; the message says why and what to do instead. */
    record Refused(String message) implements Outcome {}

    /** It could not be stored; it waits to be tried again and nothing of it is lost. */
    record NotSaved(String message) implements Outcome {}
}
