package org.arcsay.audio;

import java.time.Duration;

/**
 * How a microphone is doing.
 *
 * @param state what to tell the user
 * @param lost sound that was dropped because nobody fetched it in time
 */
public record CaptureStatus(State state, Duration lost) {
    /** What a microphone can be doing. */
    public enum State {
        LISTENING("The microphone is working."),
        NO_SIGNAL("The microphone delivers no signal. Check that it is switched on, not muted, and that the system"
                + " allows this program to use it."),
        DEVICE_LOST("The microphone is gone. Plug it in again; listening goes on by itself."),
        ENDED("The microphone is closed.");

        private final String sentence;

        State(String sentence) {
            this.sentence = sentence;
        }

        /** What it means and what to do, for the user. */
        public String sentence() {
            return sentence;
        }
    }
}
