package org.arcsay.audio;

import java.time.Duration;

/** A stream of 16-bit mono frames. Not for use by several threads at once: one thread reads and closes. */
public interface AudioSource extends AutoCloseable {
    /** Frames per second. */
    int sampleRate();

    /**
     * Reads the next frames, waiting for them where needed.
     *
     * @param buffer filled from index 0; at least one frame long
     * @return the number of frames read, -1 at the end; a live source returns 0 when nothing arrived for a while, so that
     *     its reader can look at other things
     * @throws AudioException when the sound breaks off; everything before was delivered
     */
    int read(short[] buffer) throws AudioException;

    /** Length of what was read so far. */
    Duration position();

    @Override
    void close();
}
