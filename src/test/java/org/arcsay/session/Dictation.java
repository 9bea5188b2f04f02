package org.arcsay.session;

import java.nio.file.Path;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import org.arcsay.analysis.SeriesPlan;
import org.arcsay.analysis.SeriesPlans;
import org.arcsay.grammar.SpokenGrammar;
import org.arcsay.model.ClinicSettings;
import org.arcsay.model.Heard;
import org.arcsay.model.PatientCode;
import org.arcsay.model.Utterance;
import org.arcsay.model.Versions;
import org.arcsay.model.Visit;
import org.arcsay.model.Word;
import org.arcsay.parser.Joining;
import org.arcsay.parser.Parser;
import org.arcsay.store.StoreException;
import org.arcsay.store.VisitStore;
import org.arcsay.validate.History;
import org.arcsay.validate.Validator;

/** A session over a real SQLite file that is fed words as if they had been heard. Used by one thread. */
public final class Dictation implements AutoCloseable {
    public static final Versions VERSIONS = new Versions("g1", "m1", "r1");
    private static final Clock CLOCK = Clock.fixed(Instant.parse("2026-03-02T09:00:00Z"), ZoneOffset.UTC);
    private static final SpokenGrammar GRAMMAR = SpokenGrammar.standard();

    public final VisitStore store;
    public final VisitSession session;
    private final Parser parser;
    private final Joining joining;
    private Duration clock = Duration.ZERO;

    public Dictation(Path folder, ClinicSettings settings) throws StoreException {
        this(folder, settings, Context.START);
    }

    Dictation(Path folder, ClinicSettings settings, Context start) throws StoreException {
        this(folder, settings, start, GRAMMAR, SeriesPlans.standard().usual());
    }

    public Dictation(Path folder, ClinicSettings settings, Context start, SpokenGrammar grammar, SeriesPlan plan)
            throws StoreException {
        parser = new Parser(grammar);
        joining = new Joining(parser);
        store = VisitStore.open(folder.resolve("visits.db"));
        Visit visit = store.begin(new PatientCode("T-1"), OffsetDateTime.now(CLOCK), plan.id());
        session = over(visit, store.journal(visit.id()), settings, start, plan);
    }

    static VisitSession over(Visit visit, Journal journal, ClinicSettings settings, Context start) {
        return over(visit, journal, settings, start, SeriesPlans.standard().usual());
    }

    private static VisitSession over(
            Visit visit, Journal journal, ClinicSettings settings, Context start, SeriesPlan plan) {
        Validator validator = Validator.standard();
        return new VisitSession(
                visit,
                journal,
                (reading, state) -> validator.judge(reading, state, History.none()),
                plan,
                settings,
                start,
                CLOCK);
    }

    public Outcome say(String words) {
        return say(words, List.of());
    }

    /** Sound that could have been other words as well. */
    public Outcome say(String words, List<Utterance.Rival> rivals) {
        return say(2000, words, rivals);
    }

    /** What is said so many milliseconds after the last word. */
    Outcome say(int pause, String words) {
        return say(pause, words, List.of());
    }

    Outcome say(int pause, String words, List<Utterance.Rival> rivals) {
        return sayAbove(Double.POSITIVE_INFINITY, pause, words, rivals);
    }

    /** What is spoken so many decibels above the sound around it. */
    Outcome sayAbove(double decibels, String words, List<Utterance.Rival> rivals) {
        return sayAbove(decibels, 2000, words, rivals);
    }

    Outcome sayAbove(double decibels, int pause, String words, List<Utterance.Rival> rivals) {
        clock = clock.plusMillis(pause);
        Joining.Said said =
                joining.next(utterance(words, rivals).above(decibels)).orElseThrow();
        return session.handle(said, Heard.spoken(said.utterance(), VERSIONS));
    }

    private Utterance utterance(String words, List<Utterance.Rival> rivals) {
        List<Word> heard = new ArrayList<>();
        for (String word : words.split(" ")) {
            heard.add(new Word(word, clock, clock.plusMillis(300), 1));
            clock = clock.plusMillis(300);
        }
        return new Utterance(heard, rivals);
    }

    /** What counts, in words, as the database has it. */
    public List<String> stored() throws StoreException {
        return store.visit(session.visit().id()).orElseThrow().counting().stream()
                .map(entry -> entry.reading().words())
                .toList();
    }

    @Override
    public void close() throws StoreException {
        store.close();
    }
}
