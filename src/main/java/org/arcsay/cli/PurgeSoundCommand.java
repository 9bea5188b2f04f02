package org.arcsay.cli;

import java.util.concurrent.Callable;
import org.arcsay.store.KeptSound;
import org.arcsay.store.StoreException;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.ArgGroup;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Removes kept sound. */
@Command(
        name = "purge-sound",
        mixinStandardHelpOptions = true,
        description = "Removes the sound that 'capture --keep-sound' kept. The readings stay.")
final class PurgeSoundCommand implements Callable<Integer> {
    @Mixin
    private Place place;

    @ArgGroup(multiplicity = "1")
    private What what;

    /** Whose sound. */
    static final class What {
        @Parameters(paramLabel = "VISIT", description = "Number of the visit, from 'arcsay list'.")
        private @Nullable Long visit;

        @Option(names = "--all", description = "The sound of every visit.")
        @SuppressWarnings("unused")
        private boolean all;
    }

    record PurgeView(int purged) {}

    @Override
    public Integer call() throws Exception {
        PurgeView view = new PurgeView(purge(place.folder().sound()));
        place.print(view, view.purged() == 1 ? "Removed 1 recording." : "Removed " + view.purged() + " recordings.");
        return ExitCode.OK;
    }

    private int purge(KeptSound sound) throws StoreException, CliException {
        if (what.visit == null) {
            return sound.purgeAll();
        }
        if (!sound.purge(what.visit)) {
            throw new CliException(
                    ExitCode.UNKNOWN,
                    "No sound of visit " + what.visit + " is kept. 'arcsay list' marks visits with sound.");
        }
        return 1;
    }
}
