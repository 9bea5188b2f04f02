package org.arcsay.audio;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.sun.management.ThreadMXBean;
import java.io.IOException;
import java.io.RandomAccessFile;
import java.lang.management.ManagementFactory;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Well-formed files come from the writer of the Java platform, so our reader is checked against another's idea of WAV. */
final class WavSourceTest {
    private static final int PCM = 1;

    @TempDir
    Path folder;

    private Path file() {
        return folder.resolve("take.wav");
    }

    private static short[] read(Path file) throws AudioException {
        try (WavSource source = WavSource.open(file)) {
            return Wavs.readAll(source);
        }
    }

    private String refusal(Path file) {
        return assertThrows(AudioException.class, () -> read(file)).getMessage();
    }

    @Test
    void reads16BitMonoExactly() throws Exception {
        short[] samples = Wavs.sine(5000, 440, 20_000);
        Path file = Wavs.write(file(), samples);
        assertArrayEquals(samples, read(file));
        try (WavSource source = WavSource.open(file)) {
            assertEquals(16_000, source.sampleRate());
            assertEquals(Optional.of(Duration.ofNanos(312_500_000)), source.length());
        }
    }

    @Test
    void averagesStereo() throws Exception {
        Path file = Wavs.write(file(), 44_100, 2, 16, Wavs.bytes((short) 100, (short) 300, (short) -7, (short) -9));
        assertArrayEquals(new short[] {200, -8}, read(file));
    }

    @Test
    void averagesStereoAtFullScaleWithoutOverflow() throws Exception {
        short low = Short.MIN_VALUE;
        short high = Short.MAX_VALUE;
        assertArrayEquals(
                new short[] {high, low}, read(Wavs.write(file(), 48_000, 2, 16, Wavs.bytes(high, high, low, low))));
    }

    @Test
    void reads8BitUnsigned() throws Exception {
        byte[] pcm = {(byte) 128, (byte) 255, 0, (byte) 129};
        assertArrayEquals(new short[] {0, 127 << 8, -128 << 8, 1 << 8}, read(Wavs.write(file(), 8_000, 1, 8, pcm)));
    }

    @Test
    void readsUpperBitsOf24And32Bit() throws Exception {
        byte[] threeBytes = {(byte) 0xff, 0x34, 0x12, 0, 0, (byte) 0x80};
        assertArrayEquals(
                new short[] {0x1234, Short.MIN_VALUE}, read(Wavs.write(file(), 48_000, 1, 24, threeBytes)));
        byte[] fourBytes = {1, 2, 0x34, 0x12, 0, 0, (byte) 0xff, (byte) 0xff};
        assertArrayEquals(new short[] {0x1234, -1}, read(Wavs.write(file(), 22_050, 1, 32, fourBytes)));
    }

    /** Layout: 16 bytes as always, then size 22, valid bits, speaker mask, and a GUID that begins with the format code. */
    @Test
    void readsExtensibleFormat() throws Exception {
        byte[] extended = java.util.Arrays.copyOf(Wavs.format(0xFFFE, 1, 16_000, 16), 40);
        extended[16] = 22;
        extended[18] = 16;
        extended[24] = PCM;
        byte[] pcm = Wavs.bytes((short) 11, (short) -12);
        Wavs.riff(file(), Wavs.chunk("fmt ", 40, extended), Wavs.chunk("data", pcm.length, pcm));
        assertArrayEquals(new short[] {11, -12}, read(file()));
    }

    @Test
    void skipsOtherChunksWithTheirPadding() throws Exception {
        byte[] pcm = Wavs.bytes((short) 5);
        Wavs.riff(
                file(),
                Wavs.chunk("LIST", 3, new byte[4]),
                Wavs.chunk("fmt ", 16, Wavs.format(PCM, 1, 16_000, 16)),
                Wavs.chunk("data", pcm.length, pcm),
                Wavs.chunk("LIST", 4, new byte[4]));
        assertArrayEquals(new short[] {5}, read(file()));
    }

    @ParameterizedTest
    @ValueSource(ints = {0, -1})
    void readsToTheEndWhereTheWriterLeftTheLengthOpen(int stated) throws Exception {
        byte[] pcm = Wavs.bytes((short) 1, (short) 2, (short) 3);
        Wavs.riff(file(), Wavs.chunk("fmt ", 16, Wavs.format(PCM, 1, 16_000, 16)), Wavs.chunk("data", stated, pcm));
        assertArrayEquals(new short[] {1, 2, 3}, read(file()));
    }

    @Test
    void deliversAllOfTruncatedFileAndThenSaysSo() throws Exception {
        byte[] half = Wavs.bytes(Wavs.sine(8000, 300, 9000));
        Wavs.riff(
                file(),
                Wavs.chunk("fmt ", 16, Wavs.format(PCM, 1, 16_000, 16)),
                Wavs.chunk("data", 2 * half.length, half));
        try (WavSource source = WavSource.open(file())) {
            short[] buffer = new short[16_000];
            assertEquals(8000, source.read(buffer));
            String message =
                    assertThrows(AudioException.class, () -> source.read(buffer)).getMessage();
            assertTrue(message.contains("truncated") && message.contains("1.0 s") && message.contains("0.5 s"), message);
            assertEquals(Duration.ofMillis(500), source.position());
        }
    }

    @Test
    void refusesFileThatEndsInItsHeader() throws Exception {
        Wavs.riff(file(), Wavs.chunk("fmt ", 16, new byte[5]));
        assertTrue(refusal(file()).contains("truncated"));
        Wavs.riff(file(), Wavs.chunk("LIST", 5000, new byte[5]));
        assertTrue(refusal(file()).contains("truncated"));
    }

    @Test
    void refusesEmptyFileAndFileWithoutSound() throws Exception {
        assertTrue(refusal(Files.createFile(file())).contains("empty"));
        Wavs.riff(
                file(),
                Wavs.chunk("fmt ", 16, Wavs.format(PCM, 1, 16_000, 16)),
                Wavs.chunk("data", 0, new byte[0]));
        assertTrue(refusal(file()).contains("no sound"));
    }

    @ParameterizedTest
    @CsvSource({"fLaC,FLAC", "OggS,Ogg", "ID3x,MP3", "FORM,AIFF", "hello,no kind of sound file", "RF64,64-bit WAV"})
    void namesWhatTheFileIsInstead(String start, String name) throws Exception {
        Files.write(file(), (start + " and then some more bytes").getBytes(StandardCharsets.US_ASCII));
        String message = refusal(file());
        assertTrue(message.contains("not a WAV file") && message.contains(name) && message.contains("Convert"), message);
    }

    @ParameterizedTest
    @CsvSource({
        "3, 1, 16000, 32, floating-point",
        "2, 1, 16000, 16, compressed",
        "1, 6, 16000, 16, 6 channels",
        "1, 1, 96000, 16, 96000 Hz",
        "1, 1, 4000, 16, 4000 Hz",
        "1, 1, 16000, 64, 64 bits",
        "1, 0, 16000, 16, 0 channels"
    })
    void refusesFormatsItCannotRead(int code, int channels, int rate, int bits, String reason) throws IOException {
        Wavs.riff(
                file(),
                Wavs.chunk("fmt ", 16, Wavs.format(code, channels, rate, bits)),
                Wavs.chunk("data", 8, new byte[8]));
        String message = refusal(file());
        assertTrue(message.contains(reason), message);
    }

    @Test
    void refusesSamplesWithoutFormat() throws IOException {
        Wavs.riff(file(), Wavs.chunk("data", 8, new byte[8]));
        assertTrue(refusal(file()).contains("damaged"));
    }

    @Test
    void refusesMissingFileAndFolder() {
        assertTrue(refusal(file()).contains("no file"));
        assertTrue(refusal(folder).contains("is a folder"));
    }

    @Test
    void needsNoMoreMemoryForAnHourThanForAMinute() throws Exception {
        int hourBytes = 3600 * Wavs.RATE * 2;
        Wavs.riff(
                file(),
                Wavs.chunk("fmt ", 16, Wavs.format(PCM, 1, Wavs.RATE, 16)),
                Wavs.chunk("data", hourBytes, new byte[0]));
        try (RandomAccessFile hour = new RandomAccessFile(file().toFile(), "rw")) {
            hour.setLength(hour.length() + hourBytes);
        }
        ThreadMXBean threads = (ThreadMXBean) ManagementFactory.getThreadMXBean();
        short[] buffer = new short[1600];
        long before = threads.getCurrentThreadAllocatedBytes();
        try (WavSource source = WavSource.open(file())) {
            while (source.read(buffer) >= 0) {
                // only the memory matters
            }
            assertEquals(Duration.ofHours(1), source.position());
        }
        long allocated = threads.getCurrentThreadAllocatedBytes() - before;
        assertTrue(allocated < 2_000_000, () -> allocated + " bytes allocated in all");
    }
}
