package org.arcsay.cli;

import java.util.List;
import java.util.concurrent.Callable;
import org.arcsay.model.PatientCode;
import org.arcsay.model.Visit;
import org.arcsay.store.KeptSound;
import org.arcsay.store.StoreException;
import org.arcsay.store.VisitStore;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** Lists visits. */
@Command(name = "list", mixinStandardHelpOptions = true, description = "Lists visits, the latest first.")
final class ListCommand implements Callable<Integer> {
    @Mixin
    private Place place;

    @Option(names = "--patient", paramLabel = "CODE", description = "Only the visits of this patient.")
    private @Nullable String patient;

    @Option(names = "--limit", paramLabel = "N", defaultValue = "50", description = "At most so many (default: 50).")
    private int limit;

    @Override
    public Integer call() throws Exception {
        try (VisitStore store = place.storeToRead()) {
            List<Visit> visits = visits(store);
            KeptSound sound = place.folder().sound();
            if (place.json()) {
                place.out()
                        .println(Json.text(visits.stream()
                                .map(visit -> Json.VisitView.of(visit, sound.of(visit.id())))
                                .toList()));
            } else {
                visits.forEach(visit -> place.out().println(line(visit, sound)));
            }
            if (visits.isEmpty()) {
                place.err().println("There are no visits yet. Begin with 'arcsay demo' or 'arcsay capture'.");
            }
        }
        return ExitCode.OK;
    }

    private static String line(Visit visit, KeptSound sound) {
        return VisitText.line(visit) + (sound.of(visit.id()).isPresent() ? ", SOUND KEPT" : "");
    }

    private List<Visit> visits(VisitStore store) throws StoreException, CliException {
        if (patient == null) {
            return store.recent(limit);
        }
        PatientCode code = Place.patientCode(patient);
        Place.requireKnown(store, code);
        return store.visits(code).stream()
                .sorted((one, two) -> Long.compare(two.id(), one.id()))
                .limit(limit)
                .toList();
    }
}
