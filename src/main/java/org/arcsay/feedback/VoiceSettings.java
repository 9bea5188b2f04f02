package org.arcsay.feedback;

import java.util.Locale;

/**
 * How answers sound.
 *
 * @param level how much is said
 * @param rate pace of the words, 1 is normal, from {@link ClipVoice#SLOWEST} to {@link ClipVoice#QUICKEST}
 * @param voice whose words they are
 * @param output name of a sound output, or blank for the system's default
 */
public record VoiceSettings(FeedbackLevel level, double rate, Voice voice, String output) {
    public VoiceSettings {
        if (!isRate(rate)) {
            throw new IllegalArgumentException("the speaking rate must be between " + ClipVoice.SLOWEST + " and "
                    + ClipVoice.QUICKEST + ", not " + rate);
        }
    }

    /** Whose words are heard. */
    public enum Voice {
        /** The recorded words that come with the program. */
        BUILT_IN,
        /** The voice of the operating system. */
        SYSTEM;

        /** As it is written in settings and options. */
        @Override
        public String toString() {
            return name().toLowerCase(Locale.ROOT).replace('_', '-');
        }
    }

    /** The built-in voice on the system's default output. */
    public VoiceSettings(FeedbackLevel level, double rate) {
        this(level, rate, Voice.BUILT_IN, "");
    }

    public static VoiceSettings defaults() {
        return new VoiceSettings(FeedbackLevel.SHORT, 1);
    }

    /** No answers by sound. */
    public static VoiceSettings silent() {
        return new VoiceSettings(FeedbackLevel.OFF, 1);
    }

    /** Whether words can be said at that pace. */
    public static boolean isRate(double rate) {
        return rate >= ClipVoice.SLOWEST && rate <= ClipVoice.QUICKEST;
    }
}
