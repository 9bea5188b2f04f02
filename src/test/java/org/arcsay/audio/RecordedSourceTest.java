package org.arcsay.audio;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.RandomAccessFile;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import javax.sound.sampled.AudioFormat;
import javax.sound.sampled.AudioInputStream;
import javax.sound.sampled.AudioSystem;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class RecordedSourceTest {
    @TempDir
    private Path folder;

    /** Frames 0, 1, 2 … at 16 kHz. */
    private static final class Counting implements AudioSource {
        private int next;

        @Override
        public int sampleRate() {
            return 16_000;
        }

        @Override
        public int read(short[] buffer) {
            for (int i = 0; i < buffer.length; i++) {
                buffer[i] = (short) next++;
            }
            return buffer.length;
        }

        @Override
        public Duration position() {
            return Frames.toDuration(next, sampleRate());
        }

        @Override
        public void close() {}
    }

    private static short[] read(AudioSource source, int frames) throws AudioException {
        short[] block = new short[frames];
        assertEquals(frames, source.read(block));
        return block;
    }

    /** The reference is the reader of the Java platform. */
    @Test
    void theFileIsAWaveFileWithTheFramesThatWereRead() throws Exception {
        Path file = Files.createFile(folder.resolve("a.wav"));
        List<IOException> failures = new ArrayList<>();
        short[] passed;
        try (AudioSource source = RecordedSource.into(file, new Counting(), failures::add)) {
            passed = read(source, 1600);
            assertEquals(Duration.ofMillis(100), source.position());
        }
        try (AudioInputStream reference = AudioSystem.getAudioInputStream(file.toFile())) {
            assertTrue(new AudioFormat(16_000, 16, 1, true, false).matches(reference.getFormat()));
            assertEquals(1600, reference.getFrameLength());
            byte[] bytes = reference.readAllBytes();
            for (int i = 0; i < passed.length; i++) {
                assertEquals(passed[i], (short) (bytes[2 * i] & 0xff | bytes[2 * i + 1] << 8));
            }
        }
        assertEquals(List.of(), failures);
    }

    @Test
    void whatACrashLeavesCanBeReadToItsEnd() throws Exception {
        Path file = Files.createFile(folder.resolve("a.wav"));
        AudioSource neverClosed = RecordedSource.into(file, new Counting(), failure -> {});
        short[] passed = read(neverClosed, 1600);
        try (WavSource left = WavSource.open(file)) {
            short[] block = new short[4000];
            int frames = left.read(block);
            assertArrayEquals(passed, Arrays.copyOf(block, frames));
        }
        neverClosed.close();
    }

    @Test
    void aFileThatCannotBeWrittenIsToldOnceAndTheFramesGoOn() throws Exception {
        Path full = Path.of("/dev/full");
        org.junit.jupiter.api.Assumptions.assumeTrue(Files.isWritable(full), "needs /dev/full of Linux");
        List<IOException> failures = new ArrayList<>();
        try {
            RecordedSource.into(full, new Counting(), failures::add);
        } catch (IOException e) {
            failures.add(e);
        }
        assertEquals(1, failures.size());

        Path file = Files.createFile(folder.resolve("a.wav"));
        try (AudioSource source = RecordedSource.into(file, new Counting(), failures::add)) {
            read(source, 1600);
            replaceByFullDisk(source);
            assertArrayEquals(new short[] {1600, 1601}, read(source, 2));
            assertArrayEquals(new short[] {1602, 1603}, read(source, 2));
        }
        assertEquals(2, failures.size(), "told once");
    }

    /** Lets the open file fail from now on. */
    private static void replaceByFullDisk(AudioSource source) throws Exception {
        var field = RecordedSource.class.getDeclaredField("file");
        field.setAccessible(true);
        RandomAccessFile open = (RandomAccessFile) field.get(source);
        open.close();
    }
}
