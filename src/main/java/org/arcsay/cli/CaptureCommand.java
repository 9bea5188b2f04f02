package org.arcsay.cli;

import java.nio.file.Path;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.arcsay.analysis.SeriesPlan;
import org.arcsay.app.Ears;
import org.arcsay.app.Settings;
import org.arcsay.audio.AudioException;
import org.arcsay.audio.AudioSource;
import org.arcsay.audio.Microphone;
import org.arcsay.audio.WavSource;
import org.arcsay.feedback.FeedbackLevel;
import org.arcsay.feedback.OpenedSpeaker;
import org.arcsay.feedback.Speaker;
import org.arcsay.feedback.VoiceSettings;
import org.arcsay.grammar.SpokenGrammar;
import org.arcsay.model.PatientCode;
import org.arcsay.model.Visit;
import org.arcsay.store.DataFolder;
import org.arcsay.store.KeptSound;
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
        description =
                "Listens to the microphone, or to a recording, and stores each reading the moment it is understood.")
final class CaptureCommand implements Callable<Integer> {
    @Mixin
    private Place place;

    @Option(names = "--patient", required = true, paramLabel = "CODE", description = "Patient code; never a name.")
    private String patient;

    @Mixin
    private StartOptions start;

    @Option(names = "--wav", paramLabel = "FILE", description = "A WAV recording instead of the microphone.")
    private @Nullable Path wav;

    @Mixin
    private ModelOption model;

    @Mixin
    private AnswerOptions answers;

    @Option(
            names = "--keep-sound",
            description =
                    "Also keep the sound of this visit in the data folder (setting: keep-sound; else no sound is kept).")
    private boolean keepSound;

    @Override
    public Integer call() throws Exception {
        answers.requireSane();
        Settings settings = place.settings();
        PatientCode code = Place.patientCode(patient);
        VoiceSettings voice = answers.over(settings.answers(), wav == null ? FeedbackLevel.SHORT : FeedbackLevel.OFF);
        SpokenGrammar grammar = place.grammar();
        DataFolder folder = place.folder();
        try (AudioSource source = source(settings);
                VisitStore store = place.store()) {
            start.requireKnown(store, code, place.err());
            SeriesPlan plan = start.plan(settings, grammar, Capture.visits(store, settings, grammar), code);
            Capture capture = new Capture(code, start.side(), plan, settings, grammar, keptSound(settings));
            try (Ears ears = capture.ears(folder.models(), model.folder(), place.err())) {
                place.err().println("Listening" + (wav == null ? "; say end session to finish." : "."));
                OpenedSpeaker opened = OpenedSpeaker.open(voice);
                opened.notice().ifPresent(place.err()::println);
                try (Speaker speaker = opened.speaker()) {
                    return finish(capture.listen(ears, store, source, speaker, voice.level(), place.err()));
                } finally {
                    place.backUp(store);
                }
            }
        }
    }

    private Optional<KeptSound> keptSound(Settings settings) throws StoreException {
        return keepSound || settings.habits().keepSound()
                ? Optional.of(place.folder().sound())
                : Optional.empty();
    }

    private AudioSource source(Settings settings) throws AudioException {
        return wav == null ? Microphone.open(start.microphone(settings).orElse(null)) : WavSource.open(wav);
    }

    private int finish(Visit visit) throws StoreException {
        place.print(visit, false);
        if (visit.counting().isEmpty()) {
            place.err().println("No reading was understood. 'arcsay phrases' shows what can be said.");
            return ExitCode.NO_READING;
        }
        place.pointToReview(visit);
        return ExitCode.OK;
    }
}
