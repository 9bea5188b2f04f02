package org.arcsay.audio;

import java.io.BufferedInputStream;
import java.io.EOFException;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.time.Duration;
import java.util.Locale;
import java.util.Optional;

/**
 * Streams a WAV file; used by one thread. Reads integer PCM of 8, 16, 24 or 32 bits, mono or stereo (mixed down), 8 to
 * 48 kHz, and holds no more than one buffer of it.
 */
public final class WavSource implements AudioSource {
    private static final int BUFFER_BYTES = 1 << 16;

    private final String name;
    private final InputStream in;
    private final WavHeader header;
    private byte[] bytes = new byte[0];
    private long framesRead;

    private WavSource(String name, InputStream in, WavHeader header) {
        this.name = name;
        this.in = in;
        this.header = header;
    }

    /**
     * Opens a file and reads its header.
     *
     * @throws AudioException when there is no such file, it is no WAV file, or its format cannot be read
     */
    public static WavSource open(Path file) throws AudioException {
        String name = String.valueOf(file.getFileName());
        InputStream in = stream(file, name);
        try {
            return new WavSource(name, in, WavHeader.read(in, name));
        } catch (EOFException e) {
            closeQuietly(in);
            throw WavHeader.endsEarly(name);
        } catch (IOException e) {
            closeQuietly(in);
            throw unreadable(name, e);
        } catch (AudioException e) {
            closeQuietly(in);
            throw e;
        }
    }

    private static InputStream stream(Path file, String name) throws AudioException {
        if (Files.isDirectory(file)) {
            throw new AudioException(name + " is a folder. Give the WAV file inside it.");
        }
        try {
            return new BufferedInputStream(Files.newInputStream(file), BUFFER_BYTES);
        } catch (NoSuchFileException e) {
            throw new AudioException("There is no file " + file + ". Check the name and the folder.", e);
        } catch (IOException e) {
            throw unreadable(name, e);
        }
    }

    @Override
    public int sampleRate() {
        return header.format().sampleRate();
    }

    /** Length by the file's own header; empty where its writer left the length open. */
    public Optional<Duration> length() {
        return header.dataBytes() == WavHeader.UNKNOWN_LENGTH
                ? Optional.empty()
                : Optional.of(Frames.toDuration(framesPromised(), sampleRate()));
    }

    private long framesPromised() {
        return header.dataBytes() / header.format().bytesPerFrame();
    }

    /**
     * {@inheritDoc}
     *
     * @throws AudioException when the file holds no sound or less than its header says; thrown only after all frames that
     *     are there were delivered
     */
    @Override
    public int read(short[] buffer) throws AudioException {
        int wanted = framesWanted(buffer.length);
        if (wanted == 0) {
            return -1;
        }
        int frames = readFrames(wanted);
        header.format().toMono(bytes, frames, buffer);
        framesRead += frames;
        return frames > 0 ? frames : atEnd();
    }

    private int framesWanted(int room) {
        return header.dataBytes() == WavHeader.UNKNOWN_LENGTH
                ? room
                : (int) Math.min(room, framesPromised() - framesRead);
    }

    private int readFrames(int wanted) throws AudioException {
        int size = wanted * header.format().bytesPerFrame();
        if (bytes.length < size) {
            bytes = new byte[size];
        }
        try {
            return in.readNBytes(bytes, 0, size) / header.format().bytesPerFrame();
        } catch (IOException e) {
            throw unreadable(name, e);
        }
    }

    private int atEnd() throws AudioException {
        if (framesRead == 0) {
            throw new AudioException(name + " holds no sound. Check that the recorder was running, and record again.");
        }
        if (header.dataBytes() == WavHeader.UNKNOWN_LENGTH) {
            return -1;
        }
        throw new AudioException(String.format(
                "%s is truncated: its header says %s s, but the sound ends after %s s. What was there has been used;"
                        + " copy the file again to get the rest.",
                name, seconds(Frames.toDuration(framesPromised(), sampleRate())), seconds(position())));
    }

    private static String seconds(Duration duration) {
        return String.format(Locale.ROOT, "%.1f", duration.toMillis() / 1000.0);
    }

    @Override
    public Duration position() {
        return Frames.toDuration(framesRead, sampleRate());
    }

    @Override
    public void close() {
        closeQuietly(in);
    }

    /** A file that was only read loses nothing when closing it fails. */
    private static void closeQuietly(InputStream in) {
        try {
            in.close();
        } catch (IOException ignored) {
            // nothing to save
        }
    }

    private static AudioException unreadable(String name, IOException cause) {
        return new AudioException(
                name + " cannot be read (" + cause.getMessage() + "). Check the disk and the access rights.", cause);
    }
}
