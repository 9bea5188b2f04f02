package org.arcsay.review;

/** A microphone that is tried before measuring, until it is closed. Any thread may close it. */
public interface SoundTry extends AutoCloseable {
    @Override
    void close();

    /** Hears how the try goes, often, on a thread of the try; must be quick. */
    @FunctionalInterface
    interface Listener {
        /**
         * @param level loudness of the last stretch of sound
         * @param notice a sentence about the microphone, or empty
         */
        void heard(MeasuringState.Loudness level, String notice);
    }
}
