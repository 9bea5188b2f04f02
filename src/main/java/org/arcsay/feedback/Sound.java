package org.arcsay.feedback;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.time.Duration;
import java.util.Arrays;
import java.util.List;
import javax.sound.sampled.AudioFileFormat;
import javax.sound.sampled.AudioFormat;
import javax.sound.sampled.AudioInputStream;
import javax.sound.sampled.AudioSystem;
import javax.sound.sampled.UnsupportedAudioFileException;

/** A stretch of sound: 16-bit mono samples at {@value #RATE} Hz. Immutable, so any thread may use it. */
public final class Sound {
    /** Samples a second of every sound in this package. */
    public static final int RATE = 16_000;

    /** The format of every sound in this package: 16 bits, mono, little-endian. */
    public static final AudioFormat FORMAT = new AudioFormat(RATE, 16, 1, true, false);

    private static final Sound NONE = new Sound(new short[0]);

    private final short[] samples;

    private Sound(short[] samples) {
        this.samples = samples;
    }

    public static Sound none() {
        return NONE;
    }

    public static Sound of(short[] samples) {
        return samples.length == 0 ? NONE : new Sound(samples.clone());
    }

    public static Sound silence(Duration length) {
        return new Sound(new short[samplesIn(length)]);
    }

    /**
     * Reads a WAV stream to its end.
     *
     * @throws IOException when it is not 16-bit mono at {@value #RATE} Hz, or cannot be read
     */
    public static Sound read(InputStream wav) throws IOException {
        try (AudioInputStream in = AudioSystem.getAudioInputStream(wav)) {
            if (!in.getFormat().matches(FORMAT)) {
                throw new IOException("expected 16-bit mono sound at " + RATE + " Hz, got " + in.getFormat());
            }
            return ofBytes(in.readAllBytes());
        } catch (UnsupportedAudioFileException e) {
            throw new IOException("not a WAV file", e);
        }
    }

    private static Sound ofBytes(byte[] littleEndian) {
        short[] samples = new short[littleEndian.length / 2];
        ByteBuffer.wrap(littleEndian)
                .order(ByteOrder.LITTLE_ENDIAN)
                .asShortBuffer()
                .get(samples);
        return new Sound(samples);
    }

    public static int samplesIn(Duration length) {
        return Math.toIntExact(length.toNanos() * RATE / 1_000_000_000L);
    }

    /** One sound after the other. */
    public static Sound sequence(List<Sound> parts) {
        short[] all = new short[parts.stream().mapToInt(Sound::length).sum()];
        int at = 0;
        for (Sound part : parts) {
            System.arraycopy(part.samples, 0, all, at, part.samples.length);
            at += part.samples.length;
        }
        return new Sound(all);
    }

    /** Number of samples. */
    public int length() {
        return samples.length;
    }

    public boolean isEmpty() {
        return samples.length == 0;
    }

    public Duration duration() {
        return Duration.ofNanos(samples.length * 1_000_000_000L / RATE);
    }

    public short sample(int index) {
        return samples[index];
    }

    /** A copy of the samples. */
    public short[] samples() {
        return samples.clone();
    }

    /** The part from one sample up to, and without, another. */
    public Sound slice(int from, int to) {
        return new Sound(Arrays.copyOfRange(samples, from, to));
    }

    /** The samples as little-endian bytes. */
    public byte[] bytes() {
        ByteBuffer buffer = ByteBuffer.allocate(samples.length * 2).order(ByteOrder.LITTLE_ENDIAN);
        buffer.asShortBuffer().put(samples);
        return buffer.array();
    }

    /** Writes a WAV file and leaves the stream open. */
    public void write(OutputStream out) throws IOException {
        AudioInputStream stream = new AudioInputStream(new ByteArrayInputStream(bytes()), FORMAT, samples.length);
        AudioSystem.write(stream, AudioFileFormat.Type.WAVE, out);
    }
}
