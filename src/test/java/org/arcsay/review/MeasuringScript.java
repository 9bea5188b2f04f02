package org.arcsay.review;

import java.time.Clock;
import java.util.List;
import java.util.Optional;
import org.arcsay.analysis.SeriesPlans;
import org.arcsay.grammar.SpokenGrammar;
import org.arcsay.model.ClinicSettings;
import org.arcsay.model.Finding;
import org.arcsay.model.Heard;
import org.arcsay.model.PatientCode;
import org.arcsay.model.Reading;
import org.arcsay.model.Severity;
import org.arcsay.model.Utterance;
import org.arcsay.model.Value.Angle;
import org.arcsay.model.Versions;
import org.arcsay.model.Visit;
import org.arcsay.parser.Parser;
import org.arcsay.session.Context;
import org.arcsay.session.Outcome;
import org.arcsay.session.VisitSession;

/** A session fed with words, and the state of the measuring screen after each of them. Used by one thread. */
public final class MeasuringScript implements MeasuringActions {
    private static final Parser PARSER = new Parser(SpokenGrammar.standard());
    private static final Versions VERSIONS = new Versions("g-demo", "none", "r-demo");

    private final VisitSession session = new VisitSession(
            Visit.begun(8, new PatientCode("TH-014"), DemoVisit.START),
            new ListJournal(),
            MeasuringScript::judge,
            SeriesPlans.standard().usual(),
            ClinicSettings.defaults(),
            Context.START,
            Clock.fixed(DemoVisit.START.toInstant(), DemoVisit.START.getOffset()));
    private final MeasuringModel model = new MeasuringModel(MeasuringState.starting(session), this);
    private int closed;

    public MeasuringModel model() {
        return model;
    }

    public VisitSession session() {
        return session;
    }

    public int timesClosed() {
        return closed;
    }

    /** The measuring of a right thumb up to the place where something is unusual. */
    public MeasuringScript untilDoubt() {
        for (String words : List.of(
                "right hand",
                "m p flexion forty eight",
                "m p extension deficit ten",
                "i p flexion seventy five",
                "i p extension deficit five",
                "radial abduction not tested because of pain",
                "palmar abduction one hundred")) {
            say(words);
        }
        return this;
    }

    @Override
    public void say(String words) {
        Outcome outcome = session.handle(
                PARSER.understand(Utterance.typed(List.of(words.split(" ")))), Heard.typed(words, VERSIONS));
        model.update(state -> state.answered(session, words, outcome));
    }

    @Override
    public ReviewModel review() throws HomeException {
        return new HomeScript().review(8);
    }

    @Override
    public void closed() {
        closed++;
    }

    private static List<Finding> judge(Reading reading, Visit visit) {
        boolean wide = reading.value() instanceof Angle angle && angle.degrees().intValue() > 90;
        return wide
                ? List.of(new Finding(
                        "demo.high",
                        Severity.ASK,
                        "100 degrees of palmar abduction is more than the usual 80. Is it right?",
                        List.of(),
                        Optional.of(Angle.of(80))))
                : List.of();
    }
}
