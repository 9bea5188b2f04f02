package org.arcsay.app;

import java.util.Optional;
import org.arcsay.audio.AudioException;
import org.arcsay.audio.CaptureStatus;
import org.arcsay.audio.LevelMeter;
import org.arcsay.audio.Microphone;
import org.arcsay.review.MeasuringState.Loudness;
import org.arcsay.review.SoundTry;

/** Listens to the level of a microphone on a thread of its own and keeps nothing. Any thread may close it. */
final class MicrophoneTry implements SoundTry {
    private final MicrophoneChoice choice;
    private final Optional<String> name;
    private final Listener listener;
    private volatile boolean closed;

    private MicrophoneTry(MicrophoneChoice choice, Optional<String> name, Listener listener) {
        this.choice = choice;
        this.name = name;
        this.listener = listener;
    }

    static MicrophoneTry start(MicrophoneChoice choice, Optional<String> name, Listener listener) {
        MicrophoneTry attempt = new MicrophoneTry(choice, name, listener);
        Thread thread = new Thread(attempt::run, "microphone-try");
        thread.setDaemon(true);
        thread.start();
        return attempt;
    }

    private void run() {
        try (Microphone microphone = choice.open(name)) {
            LevelMeter meter = new LevelMeter(microphone.sampleRate());
            short[] block = new short[microphone.sampleRate() / 10];
            int length = microphone.read(block);
            while (length >= 0 && !closed) {
                meter.accept(block, length);
                CaptureStatus.State state = microphone.status().state();
                listener.heard(loudness(meter, state), Notices.of(state));
                length = microphone.read(block);
            }
        } catch (AudioException e) {
            listener.heard(Loudness.SILENT, String.valueOf(e.getMessage()));
        }
    }

    private static Loudness loudness(LevelMeter meter, CaptureStatus.State state) {
        return state == CaptureStatus.State.DEVICE_LOST ? Loudness.SILENT : Notices.loudness(meter.level());
    }

    @Override
    public void close() {
        closed = true;
    }
}
