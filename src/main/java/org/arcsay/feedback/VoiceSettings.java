package org.arcsay.feedback;

/**
 * How answers sound.
 *
 * @param level how much is said
 * @param rate pace of the words, 1 is normal, from {@link ClipVoice#SLOWEST} to {@link ClipVoice#QUICKEST}
 */
public record VoiceSettings(FeedbackLevel level, double rate) {
    public VoiceSettings {
        if (!(rate >= ClipVoice.SLOWEST && rate <= ClipVoice.QUICKEST)) {
            throw new IllegalArgumentException("the speaking rate must be between " + ClipVoice.SLOWEST + " and "
                    + ClipVoice.QUICKEST + ", not " + rate);
        }
    }

    public static VoiceSettings defaults() {
        return new VoiceSettings(FeedbackLevel.SHORT, 1);
    }
}
