package org.arcsay.audio;

import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;

/**
 * A script of recordings and pauses that is heard through a {@link Microphone} as if a person spoke; for one thread. For
 * rehearsals, demonstrations and measurements without a device.
 */
public final class SimulatedMicrophone {
    /** One thing that happens. */
    sealed interface Step {
        /** A WAV file is played. */
        record Play(Path wav) implements Step {}

        /** Nobody speaks; a faint noise as any microphone has. */
        record Pause(Duration length) implements Step {}

        /** The device delivers zeros, as one that is muted or not allowed. */
        record Mute(Duration length) implements Step {}

        /** The device vanishes and comes back. */
        record Vanish(Duration length) implements Step {}
    }

    private final List<Step> steps = new ArrayList<>();
    private double speed = 1;

    public SimulatedMicrophone play(Path wav) {
        steps.add(new Step.Play(wav));
        return this;
    }

    public SimulatedMicrophone pause(Duration length) {
        steps.add(new Step.Pause(length));
        return this;
    }

    public SimulatedMicrophone mute(Duration length) {
        steps.add(new Step.Mute(length));
        return this;
    }

    public SimulatedMicrophone vanish(Duration length) {
        steps.add(new Step.Vanish(length));
        return this;
    }

    /** How many seconds pass in one second; infinity for as fast as the sound is fetched. 1 where not set. */
    public SimulatedMicrophone speed(double factor) {
        speed = factor;
        return this;
    }

    /**
     * Starts the script.
     *
     * @throws AudioException when a recording cannot be read, or two have different sample rates
     */
    public Microphone open() throws AudioException {
        return new Microphone(new ScriptedDevice(steps, speed));
    }
}
