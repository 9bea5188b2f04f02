package org.arcsay.cli;

import java.util.concurrent.Callable;
import org.arcsay.model.Visit;
import org.arcsay.store.VisitStore;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Shows one visit. */
@Command(name = "show", mixinStandardHelpOptions = true, description = "Shows the readings of one visit.")
final class ShowCommand implements Callable<Integer> {
    @Mixin
    private Place place;

    @Parameters(paramLabel = "VISIT", description = "Number of the visit, from 'arcsay list'.")
    private long visit;

    @Option(names = "--history", description = "Also what was corrected, taken back or rejected.")
    private boolean history;

    @Override
    public Integer call() throws Exception {
        try (VisitStore store = place.storeToRead()) {
            Visit found = Place.visit(store, visit);
            place.print(found, history);
        }
        return ExitCode.OK;
    }
}
