package org.arcsay.feedback;

/** A device that plays samples of {@link Sound#RATE}. Used by one thread, except that {@link #flush} may come from any. */
interface PcmOutput extends AutoCloseable {
    /** Hands samples over and waits while the device has enough of them. */
    void write(Sound sound);

    /** Waits until everything handed over has sounded. */
    void drain();

    /** Forgets what has not sounded yet. */
    void flush();

    @Override
    void close();
}
