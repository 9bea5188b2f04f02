package org.arcsay.cli;

import java.nio.file.Path;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.arcsay.analysis.SeriesPlan;
import org.arcsay.analysis.SeriesPlans;
import org.arcsay.app.Ears;
import org.arcsay.app.Settings;
import org.arcsay.audio.AudioException;
import org.arcsay.audio.AudioSource;
import org.arcsay.audio.Microphone;
import org.arcsay.audio.WavSource;
import org.arcsay.feedback.ClipVoice;
import org.arcsay.feedback.FeedbackLevel;
import org.arcsay.feedback.LineSpeaker;
import org.arcsay.feedback.NoSpeaker;
import org.arcsay.feedback.Speaker;
import org.arcsay.feedback.SpeakerException;
import org.arcsay.feedback.VoiceSettings;
import org.arcsay.model.PatientCode;
import org.arcsay.model.Side;
import org.arcsay.model.Visit;
import org.arcsay.store.DataFolder;
import org.arcsay.store.StoreException;
import org.arcsay.store.VisitStore;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** Listens to a recording or to the microphone and stores what is understood. */
@Command(
        name = "capture",
        mixinStandardHelpOptions = true,
        description = "Listens to the microphone, or to a recording, and stores each reading the moment it is understood.")
final class CaptureCommand implements Callable<Integer> {
    @Mixin
    private Place place;

    @Option(names = "--patient", required = true, paramLabel = "CODE", description = "Patient code; never a name.")
    private String patient;

    @Option(names = "--new", description = "The code is new: this is the patient's first visit.")
    private boolean isNew;

    @Option(names = "--wav", paramLabel = "FILE", description = "A WAV recording instead of the microphone.")
    private @Nullable Path wav;

    @Option(names = "--microphone", paramLabel = "NAME", description = "Recording device; a part of its name is enough.")
    private @Nullable String microphone;

    @Option(names = "--side", paramLabel = "HAND", description = "Hand to begin with: left or right. Can also be said.")
    private @Nullable Side side;

    @Option(names = "--plan", paramLabel = "PLAN", description = "Series to complete (default: the full thumb series).")
    private @Nullable String plan;

    @Mixin
    private ModelOption model;

    @Option(
            names = "--answers",
            paramLabel = "LEVEL",
            description = "How much is answered by sound: full, short, tones or off (default: short; off for a recording).")
    private @Nullable FeedbackLevel answers;

    @Option(names = "--pace", paramLabel = "RATE", defaultValue = "1", description = "Pace of spoken answers, 0.7 to 1.7.")
    private double pace;

    @Option(names = "--speaker", paramLabel = "NAME", defaultValue = "", description = "Sound output for the answers.")
    private String output;

    @Override
    public Integer call() throws Exception {
        Settings settings = place.settings();
        PatientCode code = Place.patientCode(patient);
        Capture capture = new Capture(code, Optional.ofNullable(side), plan(), settings, place.grammar());
        DataFolder folder = place.folder();
        try (AudioSource source = source(settings);
                VisitStore store = place.store()) {
            requireKnown(store, code);
            try (Ears ears = capture.ears(folder.models(), model.folder(), place.err())) {
                place.err().println("Listening" + (wav == null ? "; say end session to finish." : "."));
                try (Speaker speaker = speaker()) {
                    return finish(capture.listen(ears, store, source, speaker, level(), place.err()));
                }
            }
        }
    }

    private FeedbackLevel level() {
        if (answers != null) {
            return answers;
        }
        return wav == null ? FeedbackLevel.SHORT : FeedbackLevel.OFF;
    }

    /** Without a usable sound output the visit goes on, answered in writing only. */
    private Speaker speaker() throws CliException {
        if (!level().sounds()) {
            return new NoSpeaker();
        }
        if (!(pace >= ClipVoice.SLOWEST && pace <= ClipVoice.QUICKEST)) {
            throw new CliException(
                    ExitCode.USAGE, "--pace must be from " + ClipVoice.SLOWEST + " to " + ClipVoice.QUICKEST + ".");
        }
        try {
            return LineSpeaker.open(output, new VoiceSettings(level(), pace), (answer, time) -> {});
        } catch (SpeakerException e) {
            place.err().println(e.getMessage() + " Going on without sound.");
            return new NoSpeaker();
        }
    }

    private SeriesPlan plan() throws CliException {
        SeriesPlans plans = SeriesPlans.standard();
        if (plan == null) {
            return plans.usual();
        }
        return plans.named(plan)
                .orElseThrow(() -> new CliException(
                        ExitCode.USAGE,
                        "There is no series '" + plan + "'. Known are "
                                + String.join(", ", plans.all().stream().map(SeriesPlan::id).toList()) + "."));
    }

    private AudioSource source(Settings settings) throws AudioException {
        return wav == null ? Microphone.open(microphone != null ? microphone : settings.microphone().orElse(null)) : WavSource.open(wav);
    }

    private void requireKnown(VisitStore store, PatientCode code) throws StoreException, CliException {
        if (!isNew && !store.knows(code)) {
            CliException unknown = Place.unknownPatient(store, code);
            throw new CliException(unknown.exitCode(), unknown.getMessage() + " For a first visit add --new.");
        }
        if (isNew && store.knows(code)) {
            place.err().println("The patient code " + code + " is known already; this visit is added to it.");
        }
    }

    private int finish(Visit visit) {
        place.print(visit, false);
        if (visit.counting().isEmpty()) {
            place.err().println("No reading was understood. 'arcsay phrases' shows what can be said.");
            return ExitCode.NO_READING;
        }
        place.pointToReview(visit);
        return ExitCode.OK;
    }
}
