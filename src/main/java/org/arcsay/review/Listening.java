package org.arcsay.review;

/** What the program is doing with sound, in words that can be read from afar. */
public enum Listening {
    STARTING("Getting ready"),
    LISTENING("Listening"),
    /** Speech is coming in. */
    HEARING("Hearing you"),
    /** Our own answer sounds, and nothing is heard meanwhile. */
    ANSWERING("Answering"),
    PAUSED("Paused"),
    NO_SIGNAL("No signal"),
    DEVICE_LOST("No microphone"),
    /** There is no sound to hear, and the visit goes on by typing. */
    TYPING("Typing only"),
    ENDED("Session ended");

    private final String words;

    Listening(String words) {
        this.words = words;
    }

    public String words() {
        return words;
    }

    /** Whether something said now is heard. */
    public boolean open() {
        return this == LISTENING || this == HEARING;
    }
}
