package org.arcsay.audio;

import java.time.Duration;

/** A source seen by a level meter; used by the thread that reads it. */
record MeteredSource(AudioSource source, LevelMeter meter) implements AudioSource {
    @Override
    public int sampleRate() {
        return source.sampleRate();
    }

    @Override
    public int read(short[] buffer) throws AudioException {
        int frames = source.read(buffer);
        meter.accept(buffer, frames);
        return frames;
    }

    @Override
    public Duration position() {
        return source.position();
    }

    @Override
    public void close() {
        source.close();
    }
}
