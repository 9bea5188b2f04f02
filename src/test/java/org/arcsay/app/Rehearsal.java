package org.arcsay.app;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.OffsetDateTime;
import java.util.List;
import java.util.Optional;
import org.arcsay.analysis.SeriesPlans;
import org.arcsay.audio.AudioException;
import org.arcsay.audio.AudioSource;
import org.arcsay.feedback.FeedbackLevel;
import org.arcsay.feedback.Speaker;
import org.arcsay.grammar.SpokenGrammar;
import org.arcsay.model.ClinicSettings;
import org.arcsay.model.PatientCode;
import org.arcsay.model.Versions;
import org.arcsay.model.Visit;
import org.arcsay.parser.Parser;
import org.arcsay.recogniser.ModelException;
import org.arcsay.recogniser.Recogniser;
import org.arcsay.recogniser.SentencePause;
import org.arcsay.session.Context;
import org.arcsay.session.Journal;
import org.arcsay.session.VisitSession;
import org.arcsay.store.StoreException;
import org.arcsay.store.VisitStore;
import org.arcsay.validate.History;
import org.arcsay.validate.Validator;

/** A whole live capture over a real SQLite file and the real speech model. Used by one thread. */
final class Rehearsal implements AutoCloseable {
    static final Path SCRIPT = Path.of("src/test/resources/live");

    private final SpokenGrammar grammar = SpokenGrammar.standard();
    private final Ears ears;
    private final VisitStore store;
    private final Visit visit;

    Rehearsal(Path folder) throws ModelException, StoreException {
        this(folder, SentencePause.usual());
    }

    /**
     * @param pause the silence that ends a sentence
     */
    Rehearsal(Path folder, SentencePause pause) throws ModelException, StoreException {
        ears = Ears.open(folder.resolve("models"), Optional.empty(), grammar, pause);
        store = VisitStore.open(folder.resolve("visits.db"));
        visit = store.begin(new PatientCode("T-1"), OffsetDateTime.now(), "thumb-full");
    }

    /** One utterance of a script. */
    record Line(Path wav, String words) {}

    static List<Line> script() throws IOException {
        return Files.readAllLines(SCRIPT.resolve("script.tsv")).stream()
                .map(row -> row.split("\t"))
                .map(cells -> new Line(SCRIPT.resolve(cells[0]), cells[1]))
                .toList();
    }

    void run(AudioSource source, Speaker speaker, CaptureListener listener) throws AudioException {
        run(source, speaker, store.journal(visit.id()), listener);
    }

    Journal journal() {
        return store.journal(visit.id());
    }

    void run(AudioSource source, Speaker speaker, Journal journal, CaptureListener listener) throws AudioException {
        Validator validator = Validator.standard();
        VisitSession session = new VisitSession(
                visit,
                journal,
                (reading, state) -> validator.judge(reading, state, History.none()),
                SeriesPlans.standard().usual(),
                ClinicSettings.defaults(),
                Context.START,
                Clock.systemDefaultZone());
        try (Recogniser recogniser = ears.recogniser(source.sampleRate())) {
            Versions versions = new Versions(grammar.version(), ears.version(), validator.version());
            new LiveCapture(new Parser(grammar), session, versions, speaker, FeedbackLevel.SHORT, listener)
                    .run(source, recogniser);
        }
    }

    /** What counts, in words, as the database has it. */
    List<String> stored() throws StoreException {
        return store.visit(visit.id()).orElseThrow().counting().stream()
                .map(entry -> entry.reading().words())
                .toList();
    }

    @Override
    public void close() throws StoreException {
        store.close();
        ears.close();
    }
}
