package org.arcsay.cli;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.Objects;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.arcsay.analysis.SeriesPlans;
import org.arcsay.app.Ears;
import org.arcsay.app.Settings;
import org.arcsay.audio.AudioSource;
import org.arcsay.audio.WavSource;
import org.arcsay.model.PatientCode;
import org.arcsay.model.Visit;
import org.arcsay.store.DataFolder;
import org.arcsay.store.VisitStore;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;

/** Hears the recorded visit that comes with the program, with no microphone and no patient. */
@Command(
        name = "demo",
        mixinStandardHelpOptions = true,
        description = "Hears a recorded visit (synthetic voice, invented data), stores it and shows what was understood.")
final class DemoCommand implements Callable<Integer> {
    private static final PatientCode PATIENT = new PatientCode("DEMO-1");

    @Mixin
    private Place place;

    @Override
    public Integer call() throws Exception {
        DataFolder folder = place.folder();
        Path recording = unpack(folder.cache().resolve("demo-visit.wav"));
        Capture capture = new Capture(
                PATIENT,
                Optional.empty(),
                SeriesPlans.standard().usual(),
                Settings.defaults(),
                place.grammar());
        try (VisitStore store = place.store();
                AudioSource source = WavSource.open(recording);
                Ears ears = capture.ears(folder.models(), Optional.empty(), place.err())) {
            place.err().println("Listening to " + recording + ", 80 seconds of a therapist measuring two thumbs.");
            Visit visit = capture.listen(ears, store, source, place.err());
            place.print(visit, false);
            place.pointToReview(visit);
        }
        return ExitCode.OK;
    }

    private static Path unpack(Path target) throws IOException {
        try (InputStream in = Objects.requireNonNull(
                DemoCommand.class.getResourceAsStream("/org/arcsay/demo/visit.wav"), "the demo recording is missing")) {
            Files.copy(in, target, StandardCopyOption.REPLACE_EXISTING);
        }
        return target;
    }
}
