package org.arcsay.cli;

import java.util.List;
import java.util.concurrent.Callable;
import org.arcsay.model.JournalEvent;
import org.arcsay.model.Visit;
import org.arcsay.store.VisitStore;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Parameters;

/** Shows everything that happened in a visit. */
@Command(
        name = "history",
        mixinStandardHelpOptions = true,
        description =
                "Shows every change of a visit in order: when, what, by whom, why, and under which versions. The visit is"
                        + " made again from these changes and compared with what is shown elsewhere.")
final class HistoryCommand implements Callable<Integer> {
    @Mixin
    private Place place;

    @Parameters(paramLabel = "VISIT", description = "Number of the visit, from 'arcsay list'.")
    private long visit;

    @Override
    public Integer call() throws Exception {
        try (VisitStore store = place.storeToRead()) {
            Visit shown = Place.visit(store, visit);
            List<JournalEvent> events = store.history(visit);
            requireSame(shown, events);
            if (place.json()) {
                place.out().println(Json.text(EventText.views(events)));
            } else {
                place.out().println(VisitText.line(shown));
                EventText.lines(events).forEach(place.out()::println);
                place.out()
                        .println(events.size() + " changes; made again from them, the visit is the one shown above.");
            }
        }
        return ExitCode.OK;
    }

    private static void requireSame(Visit shown, List<JournalEvent> events) throws CliException {
        Visit again =
                Visit.begun(shown.id(), shown.patient(), shown.startedAt()).replay(events);
        if (!again.equals(shown)) {
            throw new CliException(
                    ExitCode.RECORDS,
                    "The changes of visit " + shown.id()
                            + " do not lead to what is shown of it. Run 'arcsay check-records'.");
        }
    }
}
