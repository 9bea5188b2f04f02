package org.arcsay.app;

import java.time.Duration;
import java.util.Random;
import org.arcsay.audio.AudioException;
import org.arcsay.audio.AudioSource;
import org.arcsay.feedback.FeedbackLevel;
import org.arcsay.feedback.RecordingSpeaker;
import org.arcsay.feedback.VoiceSettings;

/**
 * A room in which a loudspeaker plays into the microphone; used by the thread that reads. Its clock is the sound read so far,
 * so the visit runs as fast as it is computed and answers still stand where they would have sounded.
 */
final class Room implements AudioSource {
    private static final int DELAY = 16_000 * 30 / 1000;
    private static final double NOISE = 12;

    private final AudioSource source;
    private final double echo;
    private final Random random = new Random(3);
    private final RecordingSpeaker speaker;
    private volatile long heard;

    /**
     * @param echo how loud the loudspeaker is at the microphone, 0 to 1
     */
    Room(AudioSource source, double echo) {
        this.source = source;
        this.echo = echo;
        this.speaker = new RecordingSpeaker(new VoiceSettings(FeedbackLevel.SHORT, 1), () -> heard);
    }

    RecordingSpeaker speaker() {
        return speaker;
    }

    /** Samples read so far. */
    long heard() {
        return heard;
    }

    @Override
    public int sampleRate() {
        return source.sampleRate();
    }

    @Override
    public int read(short[] buffer) throws AudioException {
        int length = source.read(buffer);
        for (int i = 0; i < length; i++) {
            double own = echo * speaker.sampleAt(Math.max(0, heard + i - DELAY));
            double sum = buffer[i] + own + random.nextGaussian() * NOISE;
            buffer[i] = (short) Math.max(Short.MIN_VALUE, Math.min(Short.MAX_VALUE, Math.round(sum)));
        }
        heard += Math.max(0, length);
        return length;
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
