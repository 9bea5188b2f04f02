package org.arcsay.cli;

import java.util.Optional;
import org.arcsay.app.Settings;
import org.arcsay.feedback.ClipVoice;
import org.arcsay.feedback.FeedbackLevel;
import org.arcsay.feedback.VoiceSettings;
import org.arcsay.feedback.VoiceSettings.Voice;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Option;

/** How answers sound; what is not given comes from the settings file. Used by the thread that runs the command. */
final class AnswerOptions {
    @Option(
            names = "--answers",
            paramLabel = "LEVEL",
            description =
                    "How much is answered by sound: full, short, tones or off (setting: answers; else short, and off"
                            + " for a recording).")
    private @Nullable FeedbackLevel level;

    @Option(
            names = "--pace",
            paramLabel = "RATE",
            description = "Pace of spoken answers, " + ClipVoice.SLOWEST + " to " + ClipVoice.QUICKEST
                    + " (setting: pace; else 1).")
    private @Nullable Double pace;

    @Option(
            names = "--voice",
            paramLabel = "VOICE",
            description =
                    "Voice of the answers: built-in, or system for the voice of the operating system (setting: voice).")
    private @Nullable Voice voice;

    @Option(names = "--speaker", paramLabel = "NAME", description = "Sound output for the answers (setting: speaker).")
    private @Nullable String output;

    /** To be called before anything is opened. */
    void requireSane() throws CliException {
        if (pace != null && !VoiceSettings.isRate(pace)) {
            throw new CliException(
                    ExitCode.USAGE, "--pace must be from " + ClipVoice.SLOWEST + " to " + ClipVoice.QUICKEST + ".");
        }
    }

    VoiceSettings over(Settings.Answers settings, FeedbackLevel usual) {
        VoiceSettings set = settings.or(usual);
        return new VoiceSettings(
                Optional.ofNullable(level).orElse(set.level()),
                pace == null ? set.rate() : pace,
                Optional.ofNullable(voice).orElse(set.voice()),
                Optional.ofNullable(output).orElse(set.output()));
    }
}
