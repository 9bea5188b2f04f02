package org.arcsay.app;

import java.nio.file.Path;
import java.time.Clock;
import java.time.OffsetDateTime;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import org.arcsay.analysis.Customs;
import org.arcsay.analysis.SeriesPlan;
import org.arcsay.analysis.SeriesPlans;
import org.arcsay.model.ClinicSettings;
import org.arcsay.model.Dimension;
import org.arcsay.model.Measure;
import org.arcsay.model.Mode;
import org.arcsay.model.PatientCode;
import org.arcsay.model.PatientProtocol;
import org.arcsay.model.ProtocolVersion;
import org.arcsay.model.Side;
import org.arcsay.model.Versions;
import org.arcsay.model.Visit;
import org.arcsay.review.FileDrafts;
import org.arcsay.review.ReviewContext;
import org.arcsay.review.ReviewModel;
import org.arcsay.session.Context;
import org.arcsay.session.Judge;
import org.arcsay.session.VisitSession;
import org.arcsay.store.StoreException;
import org.arcsay.store.VisitStore;
import org.arcsay.validate.History;
import org.arcsay.validate.RuleTables;
import org.arcsay.validate.Validator;

/** Begins visits and opens reviews, judged with everything that is known of the patient. Any thread may use it. */
public final class Visits {
    /** What to tell where {@link #recheck} finds nothing. */
    public static final String NOTHING_TO_RECHECK =
            "Nothing to check again: there is no earlier visit of this patient, or all of it was normal. Choose another series.";

    private static final String NO_MODEL = "none";

    private final VisitStore store;
    private final ClinicSettings clinic;
    private final Customs customs;
    private final String grammarVersion;
    private final Validator validator;

    /**
     * @param customs how readings are compared, here and in reports
     */
    public Visits(VisitStore store, ClinicSettings clinic, Customs customs, String grammarVersion) {
        this.store = store;
        this.clinic = clinic;
        this.customs = customs;
        this.grammarVersion = grammarVersion;
        this.validator =
                Validator.with(RuleTables.shipped().with(customs.yardstick().error()));
    }

    public VisitStore store() {
        return store;
    }

    /**
     * Begins a visit, as stored.
     *
     * @param side the hand to begin with, if known
     */
    public VisitSession begin(PatientCode patient, Optional<Side> side, SeriesPlan plan) throws StoreException {
        return begin(patient, side, plan, Clock.systemDefaultZone());
    }

    /** Begins a visit at the time of a clock. */
    VisitSession begin(PatientCode patient, Optional<Side> side, SeriesPlan plan, Clock clock) throws StoreException {
        Visit visit = store.begin(patient, OffsetDateTime.now(clock), plan.id());
        return new VisitSession(
                visit,
                store.journal(visit.id()),
                judge(visit),
                protocol(visit).passivePermitted() ? plan : plan.without(Mode.PASSIVE),
                clinic,
                new Context(side, Mode.ACTIVE),
                clock);
    }

    /** What the patient's treatment protocol allowed when the visit began. */
    public PatientProtocol protocol(Visit visit) throws StoreException {
        return store.protocol(visit.patient(), visit.startedAt());
    }

    /** What is to be told at the begin of a visit: its protocol, if it limits anything or names the hand. */
    public Optional<String> notice(Visit visit) throws StoreException {
        PatientProtocol protocol = protocol(visit);
        return protocol.isNone() ? Optional.empty() : Optional.of("Treatment protocol: " + protocol.words() + ".");
    }

    /**
     * Sets what a patient's treatment protocol allows, from now on.
     *
     * @param statements as {@link PatientProtocol#parse} reads them
     * @param by role or initials, or empty
     * @throws IllegalArgumentException when they are not understood, or limit what is never measured
     */
    public PatientProtocol setProtocol(PatientCode patient, String statements, String by) throws StoreException {
        PatientProtocol protocol = PatientProtocol.parse(statements);
        protocol.ranges().forEach(limit -> requireMeasured(limit.measure()));
        store.setProtocol(patient, new ProtocolVersion(OffsetDateTime.now(), by, protocol));
        return protocol;
    }

    /** A limit of something that nobody measures would never speak. */
    private static void requireMeasured(Measure measure) {
        if (!measures().contains(measure)) {
            throw new IllegalArgumentException(measure.words() + " is not measured here. Limits can be set for "
                    + measures().stream()
                            .filter(known ->
                                    known.dimension() == Dimension.ANGLE || known.dimension() == Dimension.EXTENSION)
                            .map(Measure::words)
                            .collect(Collectors.joining(", "))
                    + ".");
        }
    }

    /**
     * What was not normal at the patient's last visit that has readings.
     *
     * @param side one hand, or empty for both
     * @return empty when there is no such visit, or all of it was normal
     */
    public Optional<SeriesPlan> recheck(PatientCode patient, Optional<Side> side) throws StoreException {
        return store.visits(patient).stream()
                .filter(visit -> !visit.counting().isEmpty())
                .max(Comparator.comparing(Visit::startedAt))
                .map(visit -> SeriesPlan.recheck(visit, side, customs.norms()))
                .filter(plan -> !plan.steps().isEmpty());
    }

    /** What understood the entries of a capture. */
    public Versions versions(Ears ears) {
        return versions(ears.version());
    }

    /** What understood entries that were typed, without a speech model. */
    public Versions versions() {
        return versions(NO_MODEL);
    }

    private Versions versions(String model) {
        return new Versions(grammarVersion, model, validator.version());
    }

    /**
     * Opens the review of a visit.
     *
     * @param by role or initials, written beside every change
     * @param drafts folder for what is half typed
     */
    public ReviewModel review(Visit visit, String by, Path drafts) throws StoreException {
        ReviewContext context = new ReviewContext(
                Clock.systemDefaultZone(),
                by,
                versions(),
                clinic,
                Optional.of(new StoredReport(store, clinic, customs)),
                measures());
        return ReviewModel.open(
                visit,
                store.history(visit.id()),
                store.journal(visit.id()),
                judge(visit),
                context,
                new FileDrafts(drafts));
    }

    private Judge judge(Visit visit) throws StoreException {
        History history = History.before(visit, store.visits(visit.patient())).with(protocol(visit));
        return (reading, others) -> validator.judge(reading, others, history);
    }

    private static List<Measure> measures() {
        return SeriesPlans.standard().all().stream()
                .flatMap(plan -> plan.steps().stream())
                .map(SeriesPlan.Step::measure)
                .distinct()
                .toList();
    }
}
