package org.arcsay.cli;

import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.arcsay.analysis.SeriesPlan;
import org.arcsay.app.PlanFile;
import org.arcsay.app.Settings;
import org.arcsay.app.Visits;
import org.arcsay.grammar.SpokenGrammar;
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
            description =
                    "Series to complete: one of those that come with the program, one of the clinic's own (setting:"
                            + " plans), or recheck, which is what was not normal at the last visit (setting: plan; else the full thumb series).")
    private @Nullable String plan;

    @Option(
            names = "--plans",
            paramLabel = "FILE",
            description = "Text file with the clinic's own series (setting: plans).")
    private @Nullable Path plans;

    Optional<Side> side() {
        return Optional.ofNullable(side);
    }

    Optional<String> microphone(Settings settings) {
        return Optional.ofNullable(microphone).or(settings::microphone);
    }

    /** The series, which for a re-check depends on the patient's last visit. */
    SeriesPlan plan(Settings settings, SpokenGrammar grammar, Visits visits, PatientCode patient)
            throws CliException, StoreException {
        List<SeriesPlan> plans = plans(settings, grammar);
        if (plan == null) {
            return settings.habits().plan();
        }
        if (plan.equals(SeriesPlan.RECHECK.id())) {
            return visits.recheck(patient, side())
                    .orElseThrow(() -> new CliException(ExitCode.USAGE, Visits.NOTHING_TO_RECHECK));
        }
        return plans.stream()
                .filter(known -> known.id().equals(plan))
                .findFirst()
                .orElseThrow(() -> new CliException(
                        ExitCode.USAGE,
                        "There is no series '" + plan + "'. Known are "
                                + String.join(
                                        ", ", plans.stream().map(SeriesPlan::id).toList())
                                + " and " + SeriesPlan.RECHECK.id() + "."));
    }

    private List<SeriesPlan> plans(Settings settings, SpokenGrammar grammar) throws CliException {
        if (plans == null) {
            return settings.habits().plans();
        }
        try {
            List<SeriesPlan> all = new ArrayList<>(settings.habits().plans());
            all.addAll(PlanFile.read(plans, grammar));
            return all;
        } catch (PlanFile.PlanException e) {
            throw new CliException(ExitCode.USAGE, String.valueOf(e.getMessage()));
        }
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
