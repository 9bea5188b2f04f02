package org.arcsay.audio;

import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.time.Duration;
import java.util.ArrayDeque;
import java.util.List;
import java.util.Queue;
import java.util.Random;
import org.arcsay.audio.SimulatedMicrophone.Step;
import org.jspecify.annotations.Nullable;

/** Plays a script at its own pace; used as {@link CaptureDevice} says. */
final class ScriptedDevice implements CaptureDevice {
    private static final int DEFAULT_RATE = 16_000;

    /** Noise floor of a quiet microphone: about -80 dB of full scale. */
    private static final int FAINT = 3;

    private final Queue<Step> steps;
    private final double speed;
    private final PcmFormat format;
    private final Random noise = new Random(1);
    private @Nullable WavSource playing;
    private long pauseFrames;
    private boolean muted;
    private long goneUntilNanos = Long.MIN_VALUE;
    private long startNanos;
    private long framesSinceStart;

    ScriptedDevice(List<Step> steps, double speed) throws AudioException {
        this.steps = new ArrayDeque<>(steps);
        this.speed = speed;
        format = new PcmFormat(commonRate(steps), 1, 16);
    }

    private static int commonRate(List<Step> steps) throws AudioException {
        int rate = 0;
        for (Step step : steps) {
            if (step instanceof Step.Play play) {
                try (WavSource wav = WavSource.open(play.wav())) {
                    if (rate != 0 && rate != wav.sampleRate()) {
                        throw new AudioException(play.wav().getFileName() + " has " + wav.sampleRate()
                                + " Hz, the recordings before it " + rate + " Hz. Use one sample rate in a script.");
                    }
                    rate = wav.sampleRate();
                }
            }
        }
        return rate == 0 ? DEFAULT_RATE : rate;
    }

    @Override
    public PcmFormat start() throws AudioException {
        if (isGone()) {
            throw gone();
        }
        startNanos = System.nanoTime();
        framesSinceStart = 0;
        return format;
    }

    private boolean isGone() {
        return System.nanoTime() < goneUntilNanos;
    }

    @Override
    public int read(byte[] bytes) throws AudioException {
        if (framesDue() * format.bytesPerFrame() < bytes.length) {
            return 0;
        }
        short[] samples = new short[bytes.length / format.bytesPerFrame()];
        int frames = nextFrames(samples);
        if (frames < 0) {
            return -1;
        }
        ByteBuffer.wrap(bytes).order(ByteOrder.LITTLE_ENDIAN).asShortBuffer().put(samples, 0, frames);
        framesSinceStart += frames;
        return frames * format.bytesPerFrame();
    }

    private double framesDue() {
        double elapsedSeconds = (System.nanoTime() - startNanos) / 1e9;
        return elapsedSeconds * speed * format.sampleRate() - framesSinceStart;
    }

    private int nextFrames(short[] samples) throws AudioException {
        while (true) {
            if (pauseFrames > 0) {
                return pause(samples);
            }
            if (playing != null) {
                int frames = playing.read(samples);
                if (frames > 0) {
                    return frames;
                }
                playing.close();
                playing = null;
            }
            Step step = steps.poll();
            if (step == null) {
                return -1;
            }
            begin(step);
        }
    }

    private int pause(short[] samples) {
        int frames = (int) Math.min(samples.length, pauseFrames);
        for (int i = 0; i < frames; i++) {
            samples[i] = (short) (muted ? 0 : noise.nextInt(2 * FAINT + 1) - FAINT);
        }
        pauseFrames -= frames;
        return frames;
    }

    private void begin(Step step) throws AudioException {
        if (step instanceof Step.Play play) {
            playing = WavSource.open(play.wav());
        } else if (step instanceof Step.Pause pause) {
            wait(pause.length(), false);
        } else if (step instanceof Step.Mute mute) {
            wait(mute.length(), true);
        } else if (step instanceof Step.Vanish vanish) {
            goneUntilNanos = System.nanoTime() + (long) (vanish.length().toNanos() / speed);
            throw gone();
        }
    }

    private void wait(Duration length, boolean zeros) {
        pauseFrames = Frames.fromDuration(length, format.sampleRate());
        muted = zeros;
    }

    @Override
    public boolean waitsForReader() {
        return Double.isInfinite(speed);
    }

    @Override
    public void stop() {
        if (playing != null && !isGone()) {
            playing.close();
            playing = null;
        }
    }

    private static AudioException gone() {
        return new AudioException("The simulated microphone is gone.");
    }
}
