package org.arcsay.audio;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import javax.sound.sampled.AudioFileFormat;
import javax.sound.sampled.AudioFormat;
import javax.sound.sampled.AudioInputStream;
import javax.sound.sampled.AudioSystem;

/** WAV files for tests: sound ones by the Java platform's own writer, odd ones byte by byte. */
public final class Wavs {
    static final int RATE = 16_000;

    private Wavs() {}

    /** Writes little-endian PCM with the platform's writer. */
    static Path write(Path file, int rate, int channels, int bits, byte[] pcm) throws IOException {
        AudioFormat format = new AudioFormat(rate, bits, channels, bits > 8, false);
        try (AudioInputStream in =
                new AudioInputStream(new ByteArrayInputStream(pcm), format, pcm.length / format.getFrameSize())) {
            AudioSystem.write(in, AudioFileFormat.Type.WAVE, file.toFile());
        }
        return file;
    }

    public static Path write(Path file, short... samples) throws IOException {
        return write(file, RATE, 1, 16, bytes(samples));
    }

    static byte[] bytes(short... samples) {
        ByteBuffer bytes = ByteBuffer.allocate(samples.length * 2).order(ByteOrder.LITTLE_ENDIAN);
        bytes.asShortBuffer().put(samples);
        return bytes.array();
    }

    static short[] sine(int frames, double hertz, int amplitude) {
        short[] samples = new short[frames];
        for (int i = 0; i < frames; i++) {
            samples[i] = (short) Math.round(amplitude * Math.sin(2 * Math.PI * hertz * i / RATE));
        }
        return samples;
    }

    static byte[] chunk(String id, int statedSize, byte[] content) {
        return ByteBuffer.allocate(8 + content.length)
                .order(ByteOrder.LITTLE_ENDIAN)
                .put(id.getBytes(StandardCharsets.US_ASCII))
                .putInt(statedSize)
                .put(content)
                .array();
    }

    static byte[] format(int code, int channels, int rate, int bits) {
        int frame = channels * ((bits + 7) / 8);
        return ByteBuffer.allocate(16)
                .order(ByteOrder.LITTLE_ENDIAN)
                .putShort((short) code)
                .putShort((short) channels)
                .putInt(rate)
                .putInt(rate * frame)
                .putShort((short) frame)
                .putShort((short) bits)
                .array();
    }

    static Path riff(Path file, byte[]... chunks) throws IOException {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        out.writeBytes(chunk("RIFF", 0, "WAVE".getBytes(StandardCharsets.US_ASCII)));
        for (byte[] chunk : chunks) {
            out.writeBytes(chunk);
        }
        return Files.write(file, out.toByteArray());
    }

    static short[] readAll(AudioSource source) throws AudioException {
        List<short[]> blocks = new ArrayList<>();
        short[] buffer = new short[777];
        for (int n = source.read(buffer); n >= 0; n = source.read(buffer)) {
            blocks.add(Arrays.copyOf(buffer, n));
        }
        return join(blocks);
    }

    private static short[] join(List<short[]> blocks) {
        short[] all = new short[blocks.stream().mapToInt(block -> block.length).sum()];
        int position = 0;
        for (short[] block : blocks) {
            System.arraycopy(block, 0, all, position, block.length);
            position += block.length;
        }
        return all;
    }
}
