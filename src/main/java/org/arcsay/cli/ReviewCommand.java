package org.arcsay.cli;

import java.util.concurrent.Callable;
import org.arcsay.app.Settings;
import org.arcsay.app.Visits;
import org.arcsay.grammar.SpokenGrammar;
import org.arcsay.model.Visit;
import org.arcsay.store.VisitStore;
import org.arcsay.ui.ReviewApp;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
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

    @Option(
            names = "--by",
            paramLabel = "WHO",
            defaultValue = "",
            description = "Role or initials, kept with each change.")
    private String by;

    @Override
    public Integer call() throws Exception {
        try (VisitStore store = place.store()) {
            Visit found = Place.visit(store, visit);
            Settings settings = place.settings();
            SpokenGrammar grammar = place.grammar();
            Visits visits =
                    new Visits(store, settings.clinic(), settings.habits().customs(), grammar.version());
            try {
                ReviewApp.run(visits.review(found, by, place.folder().drafts()), place.look(grammar));
            } finally {
                place.backUp(store);
            }
            place.out().println(VisitText.line(Place.visit(store, visit)));
        }
        return ExitCode.OK;
    }
}
