package org.arcsay.cli;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.Arrays;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.arcsay.store.Backup;
import org.arcsay.store.Backups;
import org.arcsay.store.SealedFiles;
import org.arcsay.store.StoreException;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.ArgGroup;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Puts a backup in the place of the records. */
@Command(
        name = "restore",
        mixinStandardHelpOptions = true,
        description = {
            "Puts a backup, plain or sealed, in the place of the records. What was there is kept in a folder beside it.",
            "With --home an empty folder is filled instead, and nothing is replaced."
        })
final class RestoreCommand implements Callable<Integer> {
    @Mixin
    private Place place;

    @Mixin
    private Password password;

    @ArgGroup(multiplicity = "1")
    private From from;

    @Option(names = "--replace", description = "Replace the records that are there without asking.")
    private boolean replace;

    /** Which backup. */
    static final class From {
        @Parameters(paramLabel = "BACKUP", description = "The backup, from 'arcsay backup --list' or from elsewhere.")
        private @Nullable Path file;

        @Option(names = "--last-good", description = "The newest backup beside the records that passes the full check.")
        @SuppressWarnings("unused")
        private boolean lastGood;
    }

    record RestoreView(
            String from, String records, @Nullable String replaced) {
        String text() {
            return "Restored " + from + " to " + records + "."
                    + (replaced == null ? "" : " What was there is kept in " + replaced + ".");
        }
    }

    @Override
    public Integer call() throws Exception {
        Path records = place.folder().database();
        Path backup = from.file != null ? from.file : lastGood(records);
        boolean sealed = SealedFiles.isSealed(backup);
        if (Files.exists(records)) {
            requireConsent(records, backup);
        }
        Optional<Path> replaced = sealed ? unseal(backup, records) : Backups.restore(backup, records, Instant.now());
        RestoreView view = new RestoreView(
                backup.toString(),
                records.toString(),
                replaced.map(Path::toString).orElse(null));
        place.print(view, view.text());
        return ExitCode.OK;
    }

    private static Path lastGood(Path records) throws StoreException, CliException {
        return Backups.beside(records)
                .lastGood()
                .map(Backup::file)
                .orElseThrow(() -> new CliException(
                        ExitCode.UNKNOWN,
                        "There is no good backup beside " + records
                                + ". Name a backup from elsewhere. Nothing was replaced."));
    }

    private void requireConsent(Path records, Path backup) throws CliException {
        if (replace) {
            return;
        }
        String question = "There are records in " + records + " already. They will be kept aside, and " + backup
                + " takes their place. Type 'replace' to go on: ";
        if (!place.keyboard().line(question).filter("replace"::equals).isPresent()) {
            throw new CliException(
                    ExitCode.NOT_CONFIRMED,
                    "There are records in " + records
                            + " already. Nothing was replaced. Add --replace, or restore elsewhere with --home.");
        }
    }

    private Optional<Path> unseal(Path backup, Path records) throws StoreException, CliException {
        char[] secret = password.known(place.keyboard());
        try {
            return SealedFiles.restore(backup, records, secret, Instant.now());
        } finally {
            Arrays.fill(secret, ' ');
        }
    }
}
