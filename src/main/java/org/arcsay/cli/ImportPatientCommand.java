package org.arcsay.cli;

import java.nio.file.Path;
import java.util.Arrays;
import java.util.concurrent.Callable;
import org.arcsay.model.PatientCode;
import org.arcsay.store.SealedFiles;
import org.arcsay.store.VisitStore;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Parameters;

/** Takes an exported patient into the records. */
@Command(
        name = "import-patient",
        mixinStandardHelpOptions = true,
        description =
                "Adds the patient of an encrypted export to the records, all visits or none. The code must be new here.")
final class ImportPatientCommand implements Callable<Integer> {
    @Mixin
    private Place place;

    @Mixin
    private Password password;

    @Parameters(paramLabel = "FILE", description = "A file of 'export-patient'.")
    private Path sealed;

    record ImportView(String patient, int visits) {}

    @Override
    public Integer call() throws Exception {
        SealedFiles.requireSealed(sealed);
        try (VisitStore store = place.store()) {
            char[] secret = password.known(place.keyboard());
            try {
                PatientCode code = SealedFiles.importPatient(store, sealed, secret);
                ImportView view = new ImportView(code.text(), store.visits(code).size());
                place.print(view, "Added patient " + view.patient() + " with " + view.visits() + " visits.");
            } finally {
                Arrays.fill(secret, ' ');
            }
            place.backUp(store);
        }
        return ExitCode.OK;
    }
}
