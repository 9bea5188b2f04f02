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

/** Writes everything about one patient into an encrypted file. */
@Command(
        name = "export-patient",
        mixinStandardHelpOptions = true,
        description = {
            "Writes every event of every visit of one patient as JSON into a file encrypted with AES-256-GCM.",
            "Kept sound is not part of it. A lost password is final: nobody can open the file without it."
        })
final class ExportPatientCommand implements Callable<Integer> {
    @Mixin
    private Place place;

    @Mixin
    private Password password;

    @Parameters(index = "0", paramLabel = "CODE", description = "Patient code.")
    private String patient;

    @Parameters(index = "1", paramLabel = "FILE", description = "The file to write; its name must be free.")
    private Path target;

    @Override
    public Integer call() throws Exception {
        PatientCode code = Place.patientCode(patient);
        try (VisitStore store = place.storeToRead()) {
            Place.requireKnown(store, code);
            char[] secret = password.fresh(place.keyboard());
            try {
                SealedFiles.export(store, code, target, secret);
            } finally {
                Arrays.fill(secret, ' ');
            }
        }
        place.out().println(target);
        return ExitCode.OK;
    }
}
