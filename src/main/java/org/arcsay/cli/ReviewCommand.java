package org.arcsay.cli;

import java.util.concurrent.Callable;
import org.arcsay.model.Visit;
import org.arcsay.store.VisitStore;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Parameters;

/** Opens the review of one visit. */
@Command(
        name = "review",
        mixinStandardHelpOptions = true,
        description = "Opens the window in which the readings of a visit are looked at, corrected and confirmed.")
final class ReviewCommand implements Callable<Integer> {
    @Mixin
    private Place place;

    @Parameters(paramLabel = "VISIT", description = "Number of the visit, from 'arcsay list'.")
    private long visit;

    @Override
    public Integer call() throws Exception {
        try (VisitStore store = place.store()) {
            Visit found = Place.visit(store, visit);
            throw new CliException(ExitCode.FAILURE, "no window yet for visit " + found.id());
        }
    }
}
