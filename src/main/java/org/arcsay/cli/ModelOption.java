package org.arcsay.cli;

import java.nio.file.Path;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Option;

/** The option that names another speech model. Used by the thread that runs the command. */
final class ModelOption {
    @Option(
            names = "--model",
            paramLabel = "FOLDER",
            defaultValue = "${env:ARCSAY_MODEL}",
            description = "Speech model folder instead of the built-in one (variable: ARCSAY_MODEL).")
    private @Nullable Path folder;

    Optional<Path> folder() {
        return Optional.ofNullable(folder);
    }
}
