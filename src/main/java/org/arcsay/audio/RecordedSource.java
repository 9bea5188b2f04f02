package org.arcsay.audio;

import java.io.IOException;
import java.io.RandomAccessFile;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Duration;
import java.util.function.Consumer;
import org.jspecify.annotations.Nullable;

/**
 * A source whose frames are also written to a WAV file (16-bit PCM, mono); used by the thread that reads it.
 *
 * <p>When writing fails, the frames still reach the reader: keeping sound never costs a reading. A file that was not closed, as
 * after a crash, has the length 0 in its header and can be read to its end by readers that take this for an open length.
 */
public final class RecordedSource implements AudioSource {
    private static final int HEADER = 44;
    private static final int BYTES_PER_FRAME = 2;
    private static final long LONGEST = 0xFFFF_FFFEL - HEADER;

    private final AudioSource source;
    private final Consumer<IOException> failed;
    private @Nullable RandomAccessFile file;
    private long bytes;

    private RecordedSource(AudioSource source, RandomAccessFile file, Consumer<IOException> failed) {
        this.source = source;
        this.file = file;
        this.failed = failed;
    }

    /**
     * Begins to write into an existing, empty file.
     *
     * @param failed is told once, by the reading thread, when the file cannot be written any more
     * @throws IOException when it cannot be written from the start
     */
    public static AudioSource into(Path existing, AudioSource source, Consumer<IOException> failed) throws IOException {
        RandomAccessFile file = new RandomAccessFile(existing.toFile(), "rw");
        try {
            file.write(header(source.sampleRate(), 0));
            return new RecordedSource(source, file, failed);
        } catch (IOException e) {
            file.close();
            throw e;
        }
    }

    /** The canonical header of "Multimedia Programming Interface and Data Specifications 1.0" (IBM and Microsoft, 1991). */
    private static byte[] header(int sampleRate, long dataBytes) {
        return ByteBuffer.allocate(HEADER)
                .order(ByteOrder.LITTLE_ENDIAN)
                .put("RIFF".getBytes(StandardCharsets.US_ASCII))
                .putInt((int) (dataBytes + HEADER - 8))
                .put("WAVEfmt ".getBytes(StandardCharsets.US_ASCII))
                .putInt(16)
                .putShort((short) 1)
                .putShort((short) 1)
                .putInt(sampleRate)
                .putInt(sampleRate * BYTES_PER_FRAME)
                .putShort((short) BYTES_PER_FRAME)
                .putShort((short) 16)
                .put("data".getBytes(StandardCharsets.US_ASCII))
                .putInt((int) dataBytes)
                .array();
    }

    @Override
    public int sampleRate() {
        return source.sampleRate();
    }

    @Override
    public int read(short[] buffer) throws AudioException {
        int frames = source.read(buffer);
        if (file != null && frames > 0) {
            write(file, buffer, frames);
        }
        return frames;
    }

    private void write(RandomAccessFile open, short[] buffer, int frames) {
        ByteBuffer block = ByteBuffer.allocate(frames * BYTES_PER_FRAME).order(ByteOrder.LITTLE_ENDIAN);
        block.asShortBuffer().put(buffer, 0, frames);
        try {
            if (bytes + block.capacity() > LONGEST) {
                throw new IOException("a WAV file cannot be longer than 4 GB");
            }
            open.write(block.array());
            bytes += block.capacity();
        } catch (IOException e) {
            giveUp(open, e);
        }
    }

    private void giveUp(RandomAccessFile open, IOException cause) {
        file = null;
        try (open) {
            open.setLength(HEADER + bytes);
        } catch (IOException e) {
            cause.addSuppressed(e);
        }
        failed.accept(cause);
    }

    @Override
    public Duration position() {
        return source.position();
    }

    /** Completes the file and closes the source. */
    @Override
    public void close() {
        RandomAccessFile open = file;
        file = null;
        if (open != null) {
            complete(open);
        }
        source.close();
    }

    private void complete(RandomAccessFile open) {
        try (open) {
            open.seek(0);
            open.write(header(sampleRate(), bytes));
        } catch (IOException e) {
            failed.accept(e);
        }
    }
}
