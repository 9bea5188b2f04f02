package org.arcsay.audio;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.function.BooleanSupplier;
import org.arcsay.audio.CaptureStatus.State;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** The capture path with a scripted device at its end, and the real device list. */
@Timeout(60)
final class MicrophoneTest {
    private static final double AS_FAST_AS_READ = Double.POSITIVE_INFINITY;

    @TempDir
    Path folder;

    private final short[] samples = Wavs.sine(20_123, 300, 12_000);
    private Path wav;

    @BeforeEach
    void writeWav() throws Exception {
        wav = Wavs.write(folder.resolve("say.wav"), samples);
    }

    @Test
    void deliversExactlyWhatTheDeviceHears() throws Exception {
        try (Microphone microphone =
                new SimulatedMicrophone().play(wav).play(wav).speed(AS_FAST_AS_READ).open()) {
            short[] heard = Wavs.readAll(microphone);
            assertArrayEquals(samples, java.util.Arrays.copyOf(heard, samples.length));
            assertEquals(2 * samples.length, heard.length);
            assertEquals(Duration.ZERO, microphone.status().lost());
            assertEquals(Frames.toDuration(heard.length, Wavs.RATE), microphone.position());
        }
    }

    @Test
    void playsPausesAsFaintNoiseAndNotAsZeros() throws Exception {
        LevelMeter meter = new LevelMeter(Wavs.RATE);
        try (Microphone microphone = new SimulatedMicrophone()
                .pause(Duration.ofSeconds(3))
                .speed(AS_FAST_AS_READ)
                .open()) {
            Wavs.readAll(meter.listeningTo(microphone));
        }
        assertEquals(Duration.ofSeconds(3), meter.quality().length());
        assertTrue(meter.quality().longestDigitalSilence().compareTo(Duration.ofMillis(10)) < 0);
        assertTrue(meter.quality().peak() > 0 && meter.quality().peak() < 0.001);
    }

    @Test
    void takesAtLeastTheTimeThatTheSoundLasts() throws Exception {
        long begin = System.nanoTime();
        try (Microphone microphone = new SimulatedMicrophone().play(wav).speed(4).open()) {
            Wavs.readAll(microphone);
        }
        double seconds = samples.length / (double) Wavs.RATE / 4;
        assertTrue(System.nanoTime() - begin > 0.8e9 * seconds);
    }

    @Test
    void saysSoAfterTwoSecondsOfDigitalSilence() throws Exception {
        List<State> states = statesWhileReading(new SimulatedMicrophone()
                .play(wav)
                .mute(Duration.ofMillis(1900))
                .play(wav)
                .mute(Duration.ofSeconds(4))
                .play(wav)
                .speed(20));
        assertEquals(List.of(State.LISTENING, State.NO_SIGNAL, State.LISTENING, State.ENDED), states);
    }

    @Test
    void goesOnByItselfWhenTheDeviceReturns() throws Exception {
        List<State> states = statesWhileReading(new SimulatedMicrophone()
                .play(wav)
                .vanish(Duration.ofSeconds(12))
                .play(wav)
                .speed(10));
        assertEquals(List.of(State.LISTENING, State.DEVICE_LOST, State.LISTENING, State.ENDED), states);
    }

    private static List<State> statesWhileReading(SimulatedMicrophone script) throws AudioException {
        List<State> states = new ArrayList<>();
        short[] buffer = new short[160];
        try (Microphone microphone = script.open()) {
            int frames;
            do {
                frames = microphone.read(buffer);
                State state = frames < 0 ? State.ENDED : microphone.status().state();
                if (states.isEmpty() || states.get(states.size() - 1) != state) {
                    states.add(state);
                }
            } while (frames >= 0);
        }
        return states;
    }

    @Test
    void keepsThirtySecondsForSlowReaderAndCountsTheRestAsLost() throws Exception {
        try (Microphone microphone = new SimulatedMicrophone()
                .pause(Duration.ofSeconds(40))
                .play(wav)
                .speed(100)
                .open()) {
            await(() -> microphone.status().lost().compareTo(Duration.ofSeconds(9)) > 0);
            short[] kept = Wavs.readAll(microphone);
            assertTrue(kept.length >= 30 * Wavs.RATE, () -> kept.length + " frames kept");
        }
    }

    private static void await(BooleanSupplier condition) throws InterruptedException {
        while (!condition.getAsBoolean()) {
            Thread.sleep(5);
        }
    }

    @Test
    void endsForItsReaderWhenClosed() throws Exception {
        Microphone microphone =
                new SimulatedMicrophone().pause(Duration.ofHours(1)).open();
        microphone.close();
        assertEquals(-1, microphone.read(new short[100]));
        await(() -> microphone.status().state() == State.ENDED);
    }

    @Test
    void refusesScriptWithMixedSampleRates() throws Exception {
        Path other = Wavs.write(folder.resolve("other.wav"), 8_000, 1, 16, Wavs.bytes(samples));
        SimulatedMicrophone script = new SimulatedMicrophone().play(wav).play(other);
        String message = assertThrows(AudioException.class, script::open).getMessage();
        assertTrue(message.contains("8000 Hz") && message.contains("16000 Hz"), message);
    }

    @Test
    void saysWhatToDoWithoutMicrophone() {
        assumeTrue(Microphone.devices().isEmpty(), "this machine has a microphone");
        String message =
                assertThrows(AudioException.class, () -> Microphone.open(null)).getMessage();
        assertTrue(message.contains("No microphone was found"), message);
    }

    @Test
    void namesTheDevicesThereAreWhenTheNameIsWrong() {
        assumeTrue(!Microphone.devices().isEmpty(), "this machine has no microphone");
        String message = assertThrows(AudioException.class, () -> Microphone.open("no such device"))
                .getMessage();
        assertTrue(message.contains(Microphone.devices().get(0)), message);
    }
}
