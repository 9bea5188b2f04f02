package org.arcsay.audio;

import java.time.Duration;

/** Measures sound that passes by; one thread feeds it, any thread may ask. */
public final class LevelMeter {
    private static final double FULL_SCALE = 32_768;

    private final int sampleRate;
    private long frames;
    private long clipped;
    private long zeroRun;
    private long longestZeroRun;
    private int peak;
    private volatile Level level = new Level(0, 0, 0, Duration.ZERO);
    private volatile AudioQuality quality = new AudioQuality(Duration.ZERO, 0, 0, Duration.ZERO);

    public LevelMeter(int sampleRate) {
        this.sampleRate = sampleRate;
    }

    /** A source that hands its frames on unchanged and shows them to this meter. */
    public AudioSource listeningTo(AudioSource source) {
        return new MeteredSource(source, this);
    }

    /** Takes in the first {@code length} frames of {@code samples}. */
    public void accept(short[] samples, int length) {
        if (length <= 0) {
            return;
        }
        int blockPeak = 0;
        int blockClipped = 0;
        double squares = 0;
        for (int i = 0; i < length; i++) {
            int sample = samples[i];
            int magnitude = Math.abs(sample);
            blockPeak = Math.max(blockPeak, magnitude);
            squares += (double) sample * sample;
            blockClipped += magnitude >= Short.MAX_VALUE ? 1 : 0;
            zeroRun = sample == 0 ? zeroRun + 1 : 0;
            longestZeroRun = Math.max(longestZeroRun, zeroRun);
        }
        frames += length;
        clipped += blockClipped;
        peak = Math.max(peak, blockPeak);
        level = new Level(
                blockPeak / FULL_SCALE,
                Math.sqrt(squares / length) / FULL_SCALE,
                (double) blockClipped / length,
                Frames.toDuration(zeroRun, sampleRate));
        quality = new AudioQuality(
                Frames.toDuration(frames, sampleRate),
                peak / FULL_SCALE,
                (double) clipped / frames,
                Frames.toDuration(longestZeroRun, sampleRate));
    }

    /** The latest block. */
    public Level level() {
        return level;
    }

    /** Everything since the meter was made. */
    public AudioQuality quality() {
        return quality;
    }
}
