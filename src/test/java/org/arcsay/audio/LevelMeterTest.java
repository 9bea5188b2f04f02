package org.arcsay.audio;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import org.arcsay.audio.AudioQuality.Warning;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

final class LevelMeterTest {
    private final LevelMeter meter = new LevelMeter(Wavs.RATE);

    /** The root mean square of a sine is its peak divided by the square root of two: 3.01 dB less. */
    @Test
    void measuresSineAsMathematicsSays() {
        meter.accept(Wavs.sine(16_000, 100, 16_384), 16_000);
        assertEquals(0.5, meter.level().peak(), 1e-4);
        assertEquals(
                -3.01, Level.decibels(meter.level().rms()) - Level.decibels(meter.level().peak()), 0.01);
        assertEquals(List.of(), meter.quality().warnings());
    }

    @Test
    void countsFramesAtFullScale() {
        meter.accept(new short[] {Short.MAX_VALUE, Short.MIN_VALUE, 5, 6}, 4);
        assertEquals(0.5, meter.level().clippedShare());
        assertEquals(1, meter.level().peak());
        assertEquals(List.of(Warning.CLIPPED), meter.quality().warnings());
    }

    @Test
    void knowsSilentFromQuietFromGoodRecordings() {
        meter.accept(new short[1000], 1000);
        assertEquals(List.of(Warning.SILENT), meter.quality().warnings());
        meter.accept(Wavs.sine(1000, 100, 20), 1000);
        assertEquals(List.of(Warning.TOO_QUIET), meter.quality().warnings());
        meter.accept(Wavs.sine(1000, 100, 5000), 1000);
        assertEquals(List.of(), meter.quality().warnings());
    }

    @Test
    void timesDigitalSilenceOverBlocks() {
        meter.accept(new short[8000], 8000);
        meter.accept(new short[8000], 8000);
        assertEquals(Duration.ofSeconds(1), meter.level().digitalSilence());
        short[] sound = new short[1600];
        sound[0] = 1;
        meter.accept(sound, 1600);
        assertEquals(
                Duration.ofMillis(100).minusNanos(62_500), meter.level().digitalSilence());
        assertEquals(Duration.ofSeconds(1), meter.quality().longestDigitalSilence());
    }

    @Test
    void handsSoundOnUnchanged(@TempDir Path folder) throws Exception {
        short[] samples = Wavs.sine(3000, 250, 8000);
        try (AudioSource source =
                meter.listeningTo(WavSource.open(Wavs.write(folder.resolve("a.wav"), samples)))) {
            assertArrayEquals(samples, Wavs.readAll(source));
            assertEquals(source.position(), meter.quality().length());
        }

        assertTrue(Math.abs(meter.quality().peak() * 32_768 - 8000) < 1);
    }
}
