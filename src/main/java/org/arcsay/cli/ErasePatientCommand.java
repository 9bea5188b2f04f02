package org.arcsay.cli;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.arcsay.app.PatientErasure;
import org.arcsay.model.PatientCode;
import org.arcsay.model.Visit;
import org.arcsay.review.FileDrafts;
import org.arcsay.store.Backup;
import org.arcsay.store.Backups;
import org.arcsay.store.Erasure;
import org.arcsay.store.StoreException;
import org.arcsay.store.VisitStore;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Takes a patient out of the records for good. */
@Command(
        name = "erase-patient",
        mixinStandardHelpOptions = true,
        description =
                "Takes a patient out of the records for good, with all visits, drafts and kept sound. The code has to be"
                        + " typed again. Backups and exports keep what they hold; those that hold the patient are named.")
final class ErasePatientCommand implements Callable<Integer> {
    @Mixin
    private Place place;

    @Parameters(paramLabel = "CODE", description = "Patient code.")
    private String patient;

    @Option(
            names = "--again",
            paramLabel = "CODE",
            description = "The same code again, instead of typing it when asked.")
    private @Nullable String again;

    record ErasureView(String patient, int visits, int events, List<String> stillIn) {
        String text() {
            return "Erased patient " + patient + ": " + visits + " visits, " + events + " events.";
        }
    }

    @Override
    public Integer call() throws Exception {
        PatientCode code = Place.patientCode(patient);
        try (VisitStore store = place.storeToKeep()) {
            Place.requireKnown(store, code);
            requireAgain(code, store.visits(code));
            Erasure erasure = new PatientErasure(
                            store,
                            place.folder().sound(),
                            new FileDrafts(place.folder().drafts()))
                    .erase(code);
            List<String> left = stillIn(code, store.file());
            ErasureView view = new ErasureView(code.text(), erasure.visits(), erasure.events(), left);
            place.print(view, view.text());
            tellOf(left);
        }
        return ExitCode.OK;
    }

    private void requireAgain(PatientCode code, List<Visit> visits) throws CliException {
        int readings =
                visits.stream().mapToInt(visit -> visit.counting().size()).sum();
        String question = "Patient " + code + " has " + visits.size() + " visits with " + readings
                + " readings. Type the code again to erase them for good: ";
        Optional<String> typed =
                again != null ? Optional.of(again) : place.keyboard().line(question);
        if (!typed.filter(code.text()::equals).isPresent()) {
            throw new CliException(
                    ExitCode.NOT_CONFIRMED,
                    typed.isPresent()
                            ? "That is another code. Nothing was erased."
                            : "There is no terminal to ask for the code. Give it a second time with --again. Nothing was"
                                    + " erased.");
        }
    }

    private static List<String> stillIn(PatientCode code, Path records) throws StoreException {
        Backups backups = Backups.beside(records);
        List<String> left = new ArrayList<>();
        backups.holding(code).stream().map(Backup::file).map(Path::toString).forEach(left::add);
        backups.replaced().stream().map(Path::toString).forEach(left::add);
        return List.copyOf(left);
    }

    private void tellOf(List<String> left) {
        if (!left.isEmpty()) {
            place.err()
                    .println("These still hold the patient, or may; remove them by hand when you no longer need them:");
            left.forEach(file -> place.err().println("  " + file));
        }
        place.err().println("Sealed backups, exports and reports elsewhere are not touched.");
    }
}
