package org.arcsay.app;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.arcsay.analysis.Customs;
import org.arcsay.analysis.SeriesPlan;
import org.arcsay.analysis.SeriesPlans;
import org.arcsay.grammar.SpokenGrammar;
import org.arcsay.model.ClinicSettings;
import org.arcsay.model.Entry;
import org.arcsay.model.Finding;
import org.arcsay.model.Mode;
import org.arcsay.model.PatientCode;
import org.arcsay.model.Side;
import org.arcsay.model.Visit;
import org.arcsay.parser.Parser;
import org.arcsay.report.StoredVisits;
import org.arcsay.report.content.Report;
import org.arcsay.report.content.ReportSource;
import org.arcsay.report.content.Section;
import org.arcsay.session.Outcome;
import org.arcsay.session.VisitSession;
import org.arcsay.store.VisitStore;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A patient's protocol from the records through a whole visit to the report; what is said is typed. */
class ProtocolVisitTest {
    private static final PatientCode PATIENT = new PatientCode("T-7");
    private static final SeriesPlan PLAN = SeriesPlans.standard().usual();

    @TempDir
    private Path folder;

    private final SpokenGrammar grammar = SpokenGrammar.standard();

    private Visits visits(VisitStore store) {
        return new Visits(store, ClinicSettings.defaults(), Customs.usual(), grammar.version());
    }

    private Visit say(Visits visits, String... sentences) throws Exception {
        VisitSession session = visits.begin(PATIENT, Optional.empty(), PLAN);
        CaptureLoop loop = new CaptureLoop(
                new Parser(grammar),
                session,
                visits.versions(),
                (utterance, command, outcome) -> outcomes.add(outcome));
        List.of(sentences).forEach(loop::type);
        session.close();
        return visits.store().visit(session.visit().id()).orElseThrow();
    }

    private final List<Outcome> outcomes = new ArrayList<>();

    private static List<String> rules(Entry entry) {
        return entry.findings().stream()
                .map(Finding::rule)
                .filter(rule -> rule.startsWith("protocol."))
                .toList();
    }

    @Test
    void whatBreaksTheProtocolIsAskedAboutKeptAsSaidAndNamedInTheReport() throws Exception {
        try (VisitStore store = VisitStore.open(folder.resolve("arcsay.db"))) {
            Visits visits = visits(store);
            visits.setProtocol(PATIENT, "involved right; no passive; IP flexion at most 40", "AK");
            Visit visit = say(
                    visits,
                    "right hand",
                    "i p flexion fifty five",
                    "affirm",
                    "passive",
                    "m p flexion thirty",
                    "affirm",
                    "active",
                    "left hand",
                    "i p flexion eighty");
            assertThat(visit.counting()).hasSize(3);
            assertThat(rules(visit.counting().get(0))).containsExactly("protocol.range");
            assertThat(rules(visit.counting().get(1))).containsExactly("protocol.passive");
            assertThat(rules(visit.counting().get(2)))
                    .as("the other hand has no range limit")
                    .isEmpty();
            assertThat(visit.counting().get(0).reading().value().words())
                    .as("kept as said")
                    .isEqualTo("55 degrees");
            assertThat(outcomes.stream().filter(Outcome.Asked.class::isInstance))
                    .hasSize(2);

            Report report = Report.of(new ReportSource(
                    StoredVisits.upTo(store, visit),
                    ClinicSettings.defaults(),
                    Customs.usual(),
                    visit.startedAt(),
                    "test"));
            Section named = report.sections().get(0);
            assertThat(named.title()).isEqualTo(Section.PROTOCOL);
            assertThat(named.facts().stream().map(Section.Fact::words))
                    .containsExactly(
                            "involved hand: right", "passive motion not permitted", "IP flexion at most 40 degrees");
            assertThat(report.accepted().stream()
                            .map(accepted -> accepted.finding().sentence()))
                    .anySatisfy(sentence -> assertThat(sentence)
                            .contains("goes beyond the limit of this patient's protocol: 40 degrees"));
        }
    }

    @Test
    void aVisitIsJudgedByWhatHeldWhenItBegan() throws Exception {
        try (VisitStore store = VisitStore.open(folder.resolve("arcsay.db"))) {
            Visits visits = visits(store);
            Visit before = say(visits, "right hand", "passive", "m p flexion thirty");
            visits.setProtocol(PATIENT, "no passive", "");
            Visit after = say(visits, "right hand", "passive", "m p flexion thirty");
            assertThat(rules(before.counting().get(0))).isEmpty();
            assertThat(rules(after.counting().get(0))).containsExactly("protocol.passive");
            assertThat(visits.notice(before)).isEmpty();
            assertThat(visits.notice(after)).hasValue("Treatment protocol: passive motion not permitted.");
            assertThat(visits.protocol(before).isNone()).isTrue();
        }
    }

    @Test
    void theSeriesDoesNotWaitForWhatTheProtocolForbids() throws Exception {
        try (VisitStore store = VisitStore.open(folder.resolve("arcsay.db"))) {
            Visits visits = visits(store);
            visits.setProtocol(PATIENT, "no passive", "");
            VisitSession session = visits.begin(PATIENT, Optional.of(Side.RIGHT), PLAN);
            assertThat(session.completeness().orElseThrow().items())
                    .isNotEmpty()
                    .noneMatch(item -> item.slot().mode() == Mode.PASSIVE);
            session.close();
        }
    }

    @Test
    void aLimitOfWhatIsNeverMeasuredIsRefused() throws Exception {
        try (VisitStore store = VisitStore.open(folder.resolve("arcsay.db"))) {
            Visits visits = visits(store);
            assertThatIllegalArgumentException()
                    .isThrownBy(() -> visits.setProtocol(PATIENT, "IP radial abduction at most 10", ""))
                    .withMessageContaining("IP radial abduction is not measured here")
                    .withMessageContaining("CMC radial abduction");
            assertThat(store.protocols(PATIENT)).isEmpty();
        }
    }
}
