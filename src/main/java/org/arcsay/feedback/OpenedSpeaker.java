package org.arcsay.feedback;

import java.util.Optional;

/**
 * A speaker as far as this machine has one: a visit goes on without sound.
 *
 * @param speaker ready to answer; closed by whoever opened it
 * @param notice what is other than asked for, as a sentence for the user
 */
public record OpenedSpeaker(Speaker speaker, Optional<String> notice) {
    /** Opens what the settings ask for, or the next best; what is lacking is told in the notice. */
    public static OpenedSpeaker open(VoiceSettings settings) {
        return open(settings, SpeechProgram.find(settings.rate()));
    }

    static OpenedSpeaker open(VoiceSettings settings, Optional<SpeechProgram> program) {
        if (!settings.level().sounds()) {
            return new OpenedSpeaker(new NoSpeaker(), Optional.empty());
        }
        try {
            Speaker builtIn = LineSpeaker.open(settings, (answer, time) -> {});
            return settings.voice() == VoiceSettings.Voice.SYSTEM
                    ? system(builtIn, settings, program)
                    : new OpenedSpeaker(builtIn, Optional.empty());
        } catch (SpeakerException e) {
            return new OpenedSpeaker(new NoSpeaker(), Optional.of(e.getMessage() + " Going on without sound."));
        }
    }

    static OpenedSpeaker system(Speaker builtIn, VoiceSettings settings, Optional<SpeechProgram> program) {
        return program.map(
                        found -> new OpenedSpeaker(new SystemVoice(builtIn, settings.level(), found), Optional.empty()))
                .orElseGet(() -> new OpenedSpeaker(
                        builtIn,
                        Optional.of("The system has no voice that this program can use (say, espeak-ng or spd-say)."
                                + " The built-in voice answers.")));
    }
}
