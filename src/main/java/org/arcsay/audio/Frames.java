package org.arcsay.audio;

import java.time.Duration;

/** Arithmetic between frames and time. */
final class Frames {
    private static final long NANOS_PER_SECOND = 1_000_000_000L;

    private Frames() {}

    static Duration toDuration(long frames, int sampleRate) {
        long seconds = frames / sampleRate;
        return Duration.ofSeconds(seconds, frames % sampleRate * NANOS_PER_SECOND / sampleRate);
    }

    static long fromDuration(Duration duration, int sampleRate) {
        return duration.toNanos() * sampleRate / NANOS_PER_SECOND;
    }
}
