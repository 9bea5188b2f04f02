package org.arcsay.app;

import java.io.IOException;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import org.arcsay.app.Settings.SettingsException;
import org.arcsay.audio.AudioException;
import org.arcsay.audio.Microphone;
import org.arcsay.audio.SimulatedMicrophone;
import org.arcsay.audio.WavSource;

/** Which microphones there are to choose from, and how to open one. Any thread may use it. */
public interface MicrophoneChoice {
    /** The names to choose from. */
    List<String> names();

    /** The one of them that is offered first, if it is there. */
    default Optional<String> usual() {
        return Optional.empty();
    }

    /** Offers this one first from the next time on. */
    default void remember(String name) {}

    /**
     * Opens one and starts to capture.
     *
     * @param name one of {@link #names}, or empty for the system's choice
     */
    Microphone open(Optional<String> name) throws AudioException;

    /**
     * The recording devices of this machine.
     *
     * @param settings the settings file, in which the choice is kept
     * @param wanted a name or a part of one that was chosen before
     */
    record Devices(Path settings, Optional<String> wanted) implements MicrophoneChoice {
        @Override
        public List<String> names() {
            return Microphone.devices();
        }

        @Override
        public Optional<String> usual() {
            return wanted.flatMap(part -> names().stream()
                    .filter(name -> name.toLowerCase(Locale.ROOT).contains(part.toLowerCase(Locale.ROOT)))
                    .findFirst());
        }

        @Override
        public void remember(String name) {
            try {
                new SettingsFile(settings).set(Map.of("microphone", name));
            } catch (IOException | SettingsException notKept) {
                // The visit goes on with the chosen one all the same, and the next visit asks again.
            }
        }

        @Override
        public Microphone open(Optional<String> name) throws AudioException {
            return Microphone.open(name.orElse(null));
        }
    }

    /** A recording that is heard in real time, as if a person spoke. */
    record Recording(Path wav) implements MicrophoneChoice {
        private static final Duration LEAD = Duration.ofSeconds(1);
        private static final Duration TAIL = Duration.ofSeconds(3);

        /**
         * @throws AudioException when it is no recording that can be heard
         */
        public static Recording of(Path wav) throws AudioException {
            WavSource.open(wav).close();
            return new Recording(wav);
        }

        @Override
        public List<String> names() {
            return List.of(String.valueOf(wav.getFileName()));
        }

        @Override
        public Microphone open(Optional<String> name) throws AudioException {
            return new SimulatedMicrophone().pause(LEAD).play(wav).pause(TAIL).open();
        }
    }
}
