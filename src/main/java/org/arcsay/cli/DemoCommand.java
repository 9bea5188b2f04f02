package org.arcsay.cli;

import java.nio.file.Path;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.arcsay.analysis.SeriesPlans;
import org.arcsay.app.DemoVisit;
import org.arcsay.app.Ears;
import org.arcsay.app.Settings;
import org.arcsay.audio.AudioSource;
import org.arcsay.audio.WavSource;
import org.arcsay.model.Visit;
import org.arcsay.store.DataFolder;
import org.arcsay.store.VisitStore;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;

/** Hears the recorded visit that comes with the program, with no microphone and no patient. */
@Command(
        name = "demo",
        mixinStandardHelpOptions = true,
        description =
                "Hears a recorded visit (synthetic voice, invented data), stores it and shows what was understood.")
final class DemoCommand implements Callable<Integer> {
    @Mixin
    private Place place;

    @Override
    public Integer call() throws Exception {
        DataFolder folder = place.folder();
        Path recording = DemoVisit.recording(folder.cache());
        Capture capture = new Capture(
                DemoVisit.PATIENT,
                Optional.empty(),
                SeriesPlans.standard().usual(),
                Settings.defaults(),
                place.grammar(),
                Optional.empty());
        try (VisitStore store = place.store();
                AudioSource source = WavSource.open(recording);
                Ears ears = capture.ears(folder.models(), Optional.empty(), place.err())) {
            place.err().println("Listening to " + recording + ", 80 seconds of a therapist measuring two thumbs.");
            Visit visit = capture.listen(ears, store, source, place.err());
            place.backUp(store);
            place.print(visit, false);
            place.pointToReview(visit);
        }
        return ExitCode.OK;
    }
}
