package org.arcsay.feedback;

import java.time.Duration;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/**
 * Any thread may use it; it plays on a thread of its own. Answers in the built-in voice on a sound device, broken off within
 * about one device buffer (80 ms) when told to stop or to say something else.
 */
public final class LineSpeaker implements Speaker {
    private static final int CHUNK = Sound.samplesIn(Duration.ofMillis(20));

    private final ClipVoice voice = ClipVoice.builtIn();
    private final VoiceSettings settings;
    private final PcmOutput output;
    private final Listener listener;
    private final Thread thread = new Thread(this::run, "answers");
    private final Object lock = new Object();
    private @Nullable Answer waiting;
    private @Nullable Sound sound;
    private boolean playing;
    private boolean breakOff;
    private boolean closed;

    LineSpeaker(VoiceSettings settings, PcmOutput output, Listener listener) {
        this.settings = settings;
        this.output = output;
        this.listener = listener;
        thread.setDaemon(true);
        thread.start();
    }

    /**
     * Opens a speaker on the sound output that the settings name.
     *
     * @throws SpeakerException when the device is missing or in use
     */
    public static LineSpeaker open(VoiceSettings settings, Listener listener) throws SpeakerException {
        return new LineSpeaker(settings, LineOutput.open(settings.output()), listener);
    }

    /** Names of the sound outputs. */
    public static List<String> devices() {
        return LineOutput.devices();
    }

    @Override
    public void answer(Answer answer) {
        Answer audible = answer.at(settings.level());
        synchronized (lock) {
            stop();
            if (!audible.isSilent() && !closed) {
                waiting = audible;
                lock.notifyAll();
            }
        }
    }

    @Override
    public void stop() {
        synchronized (lock) {
            waiting = null;
            breakOff = playing;
            if (playing) {
                output.flush();
            }
        }
    }

    @Override
    public boolean sounding() {
        synchronized (lock) {
            return playing || waiting != null;
        }
    }

    @Override
    public Optional<Sound> sound() {
        synchronized (lock) {
            return Optional.ofNullable(sound);
        }
    }

    @Override
    public void close() {
        synchronized (lock) {
            closed = true;
            stop();
            lock.notifyAll();
        }
    }

    private void run() {
        try (output) {
            for (Answer next = await(); next != null; next = await()) {
                play(next);
            }
        }
    }

    private @Nullable Answer await() {
        synchronized (lock) {
            playing = false;
            sound = null;
            while (waiting == null && !closed) {
                try {
                    lock.wait();
                } catch (InterruptedException e) {
                    return null;
                }
            }
            Answer next = closed ? null : waiting;
            waiting = null;
            playing = next != null;
            breakOff = false;
            return next;
        }
    }

    private void play(Answer answer) {
        Sound spoken = voice.say(answer, settings.rate());
        listener.started(answer, System.nanoTime());
        synchronized (lock) {
            sound = spoken;
        }
        for (int at = 0; at < spoken.length(); at += CHUNK) {
            if (brokenOff()) {
                output.flush();
                return;
            }
            output.write(spoken.slice(at, Math.min(spoken.length(), at + CHUNK)));
        }
        if (!brokenOff()) {
            output.drain();
        }
    }

    private boolean brokenOff() {
        synchronized (lock) {
            return breakOff;
        }
    }
}
