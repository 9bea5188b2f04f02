package org.arcsay.feedback;

import java.util.Optional;

/** Where answers become audible. Implementations say which threads may call them. */
public interface Speaker extends AutoCloseable {
    /** Begins an answer and breaks off whatever still sounds; returns at once. */
    void answer(Answer answer);

    /** Breaks off whatever sounds, at once. */
    void stop();

    /** Whether something sounds, or is about to. */
    boolean sounding();

    /** What sounds now, from its first sample; empty when nothing does, or where only the system knows. */
    default Optional<Sound> sound() {
        return Optional.empty();
    }

    /** Stops and lets the device go. */
    @Override
    void close();

    /** Learns when an answer becomes audible. Called on the speaker's own thread; must return quickly. */
    @FunctionalInterface
    interface Listener {
        /**
         * The first sample of an answer was handed to the device.
         *
         * @param nanoTime when, on the clock of {@link System#nanoTime()}
         */
        void started(Answer answer, long nanoTime);
    }
}
