package org.arcsay.cli;

import java.util.List;
import java.util.concurrent.Callable;
import org.arcsay.analysis.Customs;
import org.arcsay.app.Settings;
import org.arcsay.model.ClinicSettings;
import org.arcsay.model.PatientCode;
import org.arcsay.report.StoredVisits;
import org.arcsay.report.compare.CompareModel;
import org.arcsay.report.content.VisitRecord;
import org.arcsay.store.StoreException;
import org.arcsay.store.VisitStore;
import org.arcsay.ui.CompareApp;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** Opens the comparison of a patient's visits. */
@Command(
        name = "compare",
        mixinStandardHelpOptions = true,
        description = "Opens the window in which a patient's visits stand beside each other, the other hand and norms.")
final class CompareCommand implements Callable<Integer> {
    @Mixin
    private Place place;

    @Mixin
    private ReportOptions options;

    @Option(names = "--patient", paramLabel = "CODE", description = "Patient to begin with (default: the first one).")
    private @Nullable String patient;

    @Override
    public Integer call() throws Exception {
        Settings settings = place.settings();
        ClinicSettings clinic = settings.clinic();
        Customs customs = options.customs(settings);
        try (VisitStore store = place.storeToRead()) {
            CompareModel model = new CompareModel(
                    new Stored(store), visits -> options.source(visits, clinic, customs), options.writers());
            if (patient != null) {
                PatientCode code = Place.patientCode(patient);
                if (!store.knows(code)) {
                    throw Place.unknownPatient(store, code, "");
                }
                model.choosePatient(code);
            }
            CompareApp.run(model, place.look(place.grammar()));
        }
        return ExitCode.OK;
    }

    /** The records file that is open. */
    private record Stored(VisitStore store) implements CompareModel.Records {
        @Override
        public List<PatientCode> patients() throws StoreException {
            return store.patients();
        }

        @Override
        public List<VisitRecord> visits(PatientCode patient) throws StoreException {
            return StoredVisits.of(store, patient);
        }
    }
}
