package org.arcsay.cli;

import java.io.PrintWriter;
import java.util.Optional;
import org.arcsay.analysis.SeriesPlan;
import org.arcsay.analysis.SeriesPlans;
import org.arcsay.app.Settings;
import org.arcsay.model.PatientCode;
import org.arcsay.model.Side;
import org.arcsay.store.StoreException;
import org.arcsay.store.VisitStore;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Option;

/** What a visit begins with. Used by the thread that runs the command. */
final class StartOptions {
    @Option(names = "--new", description = "The code is new: this is the patient's first visit.")
    private boolean isNew;

    @Option(
            names = "--microphone",
            paramLabel = "NAME",
            description = "Recording device; a part of its name is enough (setting: microphone).")
    private @Nullable String microphone;

    @Option(names = "--side", paramLabel = "HAND", description = "Hand to begin with: left or right. Can also be said.")
    private @Nullable Side side;

    @Option(
            names = "--plan",
            paramLabel = "PLAN",
            description = "Series to complete (setting: plan; else the full thumb series).")
    private @Nullable String plan;

    Optional<Side> side() {
        return Optional.ofNullable(side);
    }

    Optional<String> microphone(Settings settings) {
        return Optional.ofNullable(microphone).or(settings::microphone);
    }

    SeriesPlan plan(Settings settings) throws CliException {
        SeriesPlans plans = SeriesPlans.standard();
        if (plan == null) {
            return settings.habits().plan();
        }
        return plans.named(plan)
                .orElseThrow(() -> new CliException(
                        ExitCode.USAGE,
                        "There is no series '" + plan + "'. Known are "
                                + String.join(
                                        ", ",
                                        plans.all().stream().map(SeriesPlan::id).toList()) + "."));
    }

    /** A code that is not in the records may be a slip; it needs the option for a new one. */
    void requireKnown(VisitStore store, PatientCode code, PrintWriter err) throws StoreException, CliException {
        if (!isNew && !store.knows(code)) {
            throw Place.unknownPatient(store, code, " For a first visit add --new.");
        }
        if (isNew && store.knows(code)) {
            err.println("The patient code " + code + " is known already; this visit is added to it.");
        }
    }
}
