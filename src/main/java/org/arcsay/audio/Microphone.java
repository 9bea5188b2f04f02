package org.arcsay.audio;

import java.time.Duration;
import java.util.List;
import java.util.concurrent.ArrayBlockingQueue;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicLong;
import org.jspecify.annotations.Nullable;

/**
 * Live sound; one thread reads and closes, any thread may ask for the status. A capture thread of its own moves sound
 * from the device into a bounded queue and does nothing else, so a slow reader cannot stall the device: when the queue
 * is full, sound is dropped and counted. A device that vanishes is looked for until it returns.
 */
public final class Microphone implements AudioSource {
    private static final Duration BLOCK = Duration.ofMillis(50);
    private static final Duration QUEUE_LENGTH = Duration.ofSeconds(30);
    private static final Duration NO_SIGNAL_AFTER = Duration.ofSeconds(2);
    private static final Duration LOST_AFTER = Duration.ofSeconds(2);
    private static final long POLL_MILLIS = 5;
    private static final long RETRY_MILLIS = 500;
    private static final long READ_WAIT_MILLIS = 100;
    private static final short[] END = new short[0];

    private final CaptureDevice device;
    private final int sampleRate;
    private final BlockingQueue<short[]> queue = new ArrayBlockingQueue<>((int) QUEUE_LENGTH.dividedBy(BLOCK));
    private final AtomicLong framesDropped = new AtomicLong();
    private final Thread capture;
    private volatile CaptureStatus.State state = CaptureStatus.State.LISTENING;
    private volatile boolean closed;
    private PcmFormat format;
    private long zeroRun;
    private short[] block = END;
    private int blockPosition;
    private boolean ended;
    private long framesRead;

    Microphone(CaptureDevice device) throws AudioException {
        this.device = device;
        format = device.start();
        sampleRate = format.sampleRate();
        capture = new Thread(this::capture, "arcsay-capture");
        capture.setDaemon(true);
        capture.start();
    }

    /** Names of the devices that can record, the system's own choice first. */
    public static List<String> devices() {
        return LineDevice.names();
    }

    /**
     * Opens a device and starts capturing.
     *
     * @param name one of {@link #devices()} or a part of one; null for the system's own choice
     * @throws AudioException when there is no such device or it offers no usable format
     */
    public static Microphone open(@Nullable String name) throws AudioException {
        return new Microphone(new LineDevice(name));
    }

    @Override
    public int sampleRate() {
        return sampleRate;
    }

    /** How capturing goes at this moment. */
    public CaptureStatus status() {
        return new CaptureStatus(state, Frames.toDuration(framesDropped.get(), sampleRate));
    }

    @Override
    public int read(short[] buffer) throws AudioException {
        if (blockPosition == block.length && !nextBlock()) {
            return ended ? -1 : 0;
        }
        int frames = Math.min(buffer.length, block.length - blockPosition);
        System.arraycopy(block, blockPosition, buffer, 0, frames);
        blockPosition += frames;
        framesRead += frames;
        return frames;
    }

    private boolean nextBlock() {
        if (ended) {
            return false;
        }
        try {
            short[] next = queue.poll(READ_WAIT_MILLIS, TimeUnit.MILLISECONDS);
            ended = next == END;
            if (next == null || ended) {
                return false;
            }
            block = next;
            blockPosition = 0;
            return true;
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            ended = true;
            return false;
        }
    }

    @Override
    public Duration position() {
        return Frames.toDuration(framesRead, sampleRate);
    }

    @Override
    public void close() {
        closed = true;
        capture.interrupt();
        ended = true;
        state = CaptureStatus.State.ENDED;
    }

    private void capture() {
        try {
            while (!closed && !captureUntilLost()) {
                state = CaptureStatus.State.DEVICE_LOST;
                device.stop();
                restart();
            }
            queue.put(END);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        } finally {
            device.stop();
            state = CaptureStatus.State.ENDED;
        }
    }

    /** True when the sound came to its own end, false when the device is gone. */
    private boolean captureUntilLost() throws InterruptedException {
        byte[] bytes = new byte[(int) Frames.fromDuration(BLOCK, sampleRate) * format.bytesPerFrame()];
        long lastSound = System.nanoTime();
        while (!closed) {
            int length;
            try {
                length = device.read(bytes);
            } catch (AudioException e) {
                return false;
            }
            if (length < 0) {
                return true;
            }
            if (length > 0) {
                lastSound = System.nanoTime();
                deliver(bytes, length / format.bytesPerFrame());
            } else if (System.nanoTime() - lastSound > LOST_AFTER.toNanos()) {
                return false;
            } else {
                Thread.sleep(POLL_MILLIS);
            }
        }
        return true;
    }

    private void deliver(byte[] bytes, int frames) throws InterruptedException {
        short[] mono = new short[frames];
        format.toMono(bytes, frames, mono);
        watchSignal(mono);
        if (device.waitsForReader()) {
            queue.put(mono);
        } else if (!queue.offer(mono)) {
            framesDropped.addAndGet(frames);
        }
    }

    private void watchSignal(short[] mono) {
        for (short sample : mono) {
            zeroRun = sample == 0 ? zeroRun + 1 : 0;
        }
        state = zeroRun >= Frames.fromDuration(NO_SIGNAL_AFTER, sampleRate)
                ? CaptureStatus.State.NO_SIGNAL
                : CaptureStatus.State.LISTENING;
    }

    /** Waits until the device is back with the sample rate it had: the listener downstream was made for that. */
    private void restart() throws InterruptedException {
        while (!closed) {
            Thread.sleep(RETRY_MILLIS);
            try {
                PcmFormat again = device.start();
                if (again.sampleRate() == sampleRate) {
                    format = again;
                    zeroRun = 0;
                    return;
                }
                device.stop();
            } catch (AudioException e) {
                device.stop();
            }
        }
    }
}
