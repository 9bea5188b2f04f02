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

    @Option(
            names = "--model",
            paramLabel = "FOLDER",
            defaultValue = "${env:ARCSAY_MODEL}",
            description = "Speech model folder instead of the built-in one (variable: ARCSAY_MODEL).")
    private @Nullable Path model;

    @Override
    public Integer call() throws Exception {
        Settings settings = place.settings();
        PatientCode code = Place.patientCode(patient);
        Capture capture = new Capture(code, Optional.ofNullable(side), plan(), settings, place.grammar());
        DataFolder folder = place.folder();
        try (AudioSource source = source(settings);
                VisitStore store = place.store()) {
            requireKnown(store, code);
            try (Ears ears = capture.ears(folder.models(), Optional.ofNullable(model), place.err())) {
                place.err().println("Listening" + (wav == null ? "; say end session to finish." : "."));
                Visit visit = capture.listen(ears, store, source, place.err());
                return finish(visit);
            }
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
            throw Place.unknownPatient(store, code);
        }
        if (isNew && store.knows(code)) {
            place.err().println("The patient code " + code + " is known already; this visit is added to it.");
        }
    }

    private int finish(Visit visit) {
        if (place.json()) {
            place.out().println(Json.text(Json.VisitView.of(visit)));
        } else {
            VisitText.print(visit, false, place.out());
        }
        if (visit.counting().isEmpty()) {
            place.err().println("No reading was understood. 'arcsay phrases' shows what can be said.");
            return ExitCode.NO_READING;
        }
        place.err().println("Nothing is final yet. Look through it with: arcsay review " + visit.id());
        return ExitCode.OK;
    }
}
