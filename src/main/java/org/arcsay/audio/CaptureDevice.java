package org.arcsay.audio;

/** Where captured sound comes from; used by the capture thread, after a first start by the thread that opens it. */
interface CaptureDevice {
    /**
     * Opens the device and starts it; also after it was lost.
     *
     * @throws AudioException when it is not there or offers no usable format
     */
    PcmFormat start() throws AudioException;

    /**
     * Reads what is there, without waiting long.
     *
     * @param bytes filled with whole frames from index 0
     * @return the number of bytes; 0 when there are none yet; -1 when no more will ever come
     * @throws AudioException when the device is gone
     */
    int read(byte[] bytes) throws AudioException;

    /** Whether it can be held up; a real device cannot, and what is not fetched in time is lost. */
    boolean waitsForReader();

    /** Lets go of the device; harmless when it is not started. */
    void stop();
}
