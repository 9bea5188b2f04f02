package org.arcsay.cli;

import java.time.Clock;
import java.util.List;
import java.util.concurrent.Callable;
import java.util.stream.Stream;
import org.arcsay.analysis.SeriesPlan;
import org.arcsay.analysis.SeriesPlans;
import org.arcsay.model.Measure;
import org.arcsay.model.Versions;
import org.arcsay.model.Visit;
import org.arcsay.review.FileDrafts;
import org.arcsay.review.ReviewContext;
import org.arcsay.review.ReviewModel;
import org.arcsay.session.Judge;
import org.arcsay.store.VisitStore;
import org.arcsay.ui.ReviewApp;
import org.arcsay.validate.History;
import org.arcsay.validate.Validator;
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

    @Option(names = "--by", paramLabel = "WHO", defaultValue = "", description = "Role or initials, kept with each change.")
    private String by;

    @Override
    public Integer call() throws Exception {
        try (VisitStore store = place.store()) {
            Visit found = Place.visit(store, visit);
            try {
                ReviewApp.run(model(store, found));
            } finally {
                place.backUp(store);
            }
            place.out().println(VisitText.line(Place.visit(store, visit)));
        }
        return ExitCode.OK;
    }

    private ReviewModel model(VisitStore store, Visit found) throws Exception {
        Validator validator = Validator.standard();
        History history = Place.history(store, found);
        Judge judge = (reading, others) -> validator.judge(reading, others, history);
        Versions versions = new Versions(place.grammar().version(), "none", validator.version());
        ReviewContext context = new ReviewContext(
                Clock.systemDefaultZone(), by, versions, place.settings().clinic(), measures());
        return ReviewModel.open(
                found,
                store.history(found.id()),
                store.journal(found.id()),
                judge,
                context,
                new FileDrafts(place.folder().drafts()));
    }

    private static List<Measure> measures() {
        Stream<SeriesPlan> plans = SeriesPlans.standard().all().stream();
        return plans.flatMap(plan -> plan.steps().stream())
                .map(SeriesPlan.Step::measure)
                .distinct()
                .toList();
    }
}
