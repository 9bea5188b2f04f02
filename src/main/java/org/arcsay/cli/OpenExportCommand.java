package org.arcsay.cli;

import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.concurrent.Callable;
import org.arcsay.store.DurableFiles;
import org.arcsay.store.SealedFiles;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Opens the encrypted export of a patient. */
@Command(
        name = "open-export",
        mixinStandardHelpOptions = true,
        description = "Opens a file of 'export-patient' and prints its JSON. What is printed is no longer encrypted.")
final class OpenExportCommand implements Callable<Integer> {
    @Mixin
    private Place place;

    @Mixin
    private Password password;

    @Parameters(paramLabel = "FILE", description = "The encrypted export.")
    private Path sealed;

    @Option(names = "--to", paramLabel = "FILE", description = "Write the JSON to FILE, readable by you only.")
    private @Nullable Path target;

    @Override
    public Integer call() throws Exception {
        if (target != null && Files.exists(target)) {
            throw new CliException(
                    ExitCode.USAGE,
                    "There is a file " + target + " already. It was left as it is. Choose another name.");
        }
        SealedFiles.requireSealed(sealed);
        char[] secret = password.known(place.keyboard());
        String json;
        try {
            json = SealedFiles.openExport(sealed, secret);
        } finally {
            Arrays.fill(secret, ' ');
        }
        if (target == null) {
            place.out().println(json);
        } else {
            DurableFiles.replace(target, file -> Files.writeString(file, json, StandardCharsets.UTF_8));
            place.out().println(target);
        }
        return ExitCode.OK;
    }
}
