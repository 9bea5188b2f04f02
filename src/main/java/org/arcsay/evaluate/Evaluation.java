package org.arcsay.evaluate;

import java.math.BigDecimal;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Duration;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.arcsay.analysis.SeriesPlans;
import org.arcsay.app.CaptureListener;
import org.arcsay.app.CaptureLoop;
import org.arcsay.app.Ears;
import org.arcsay.audio.AudioException;
import org.arcsay.audio.AudioSource;
import org.arcsay.audio.WavSource;
import org.arcsay.evaluate.Expected.Fields;
import org.arcsay.grammar.SpokenGrammar;
import org.arcsay.model.ClinicSettings;
import org.arcsay.model.Dimension;
import org.arcsay.model.Entry;
import org.arcsay.model.Mode;
import org.arcsay.model.Motion;
import org.arcsay.model.PatientCode;
import org.arcsay.model.Reading;
import org.arcsay.model.Side;
import org.arcsay.model.Utterance;
import org.arcsay.model.Value;
import org.arcsay.model.ValueForm;
import org.arcsay.model.Versions;
import org.arcsay.model.Visit;
import org.arcsay.parser.Command;
import org.arcsay.parser.Parser;
import org.arcsay.recogniser.Recogniser;
import org.arcsay.session.Context;
import org.arcsay.session.Outcome;
import org.arcsay.session.VisitSession;
import org.arcsay.validate.History;
import org.arcsay.validate.Validator;

/**
 * Runs a folder of recordings through the program's own line, from sound to accepted reading, and compares. One thread uses
 * it. Nothing is stored.
 */
public final class Evaluation {
    private static final Versions VERSIONS = new Versions("evaluation", "evaluation", "evaluation");

    private final SpokenGrammar grammar;
    private final Ears ears;
    private final Validator validator = Validator.standard();

    public Evaluation(SpokenGrammar grammar, Ears ears) {
        this.grammar = grammar;
        this.ears = ears;
    }

    /**
     * Evaluates the recordings that {@code clips.tsv} in a folder lists.
     *
     * @throws EvaluationException when the list cannot be used
     * @throws AudioException when a recording cannot be read
     */
    public EvaluationResult run(Path folder) throws EvaluationException, AudioException {
        List<Judged> judged = new ArrayList<>();
        Duration audio = Duration.ZERO;
        long start = System.nanoTime();
        for (Expected expected : ExpectedList.read(folder)) {
            try (AudioSource source = WavSource.open(expected.wav())) {
                judged.add(judge(expected, source));
                audio = audio.plus(source.position());
            }
        }
        return new EvaluationResult(judged, audio, Duration.ofNanos(System.nanoTime() - start));
    }

    /** Everything that one recording led to. */
    private static final class Collected implements CaptureListener {
        private final VisitSession session;
        private final Map<Duration, String> words = new TreeMap<>();
        private boolean asked;

        Collected(VisitSession session) {
            this.session = session;
        }

        /** An utterance that goes on with the one before it begins where that began, and stands in its place. */
        @Override
        public void answered(Utterance utterance, Command command, Outcome outcome) {
            words.put(utterance.start(), utterance.text());
            asked |= outcome instanceof Outcome.Asked;
        }

        /** What is kept without a question. */
        List<Reading> accepted() {
            return session.visit().counting().stream()
                    .filter(entry -> !entry.doubtful())
                    .map(Entry::reading)
                    .toList();
        }

        List<String> words() {
            return words.values().stream()
                    .flatMap(text -> Stream.of(text.split(" ")))
                    .toList();
        }
    }

    private Judged judge(Expected expected, AudioSource source) throws AudioException {
        VisitSession session = freshSession();
        Collected collected = new Collected(session);
        try (Recogniser recogniser = ears.recogniser(source.sampleRate())) {
            new CaptureLoop(new Parser(grammar), session, VERSIONS, collected).run(source, recogniser);
        }
        List<Reading> accepted = collected.accepted();
        return new Judged(
                String.valueOf(expected.wav().getFileName()),
                verdict(expected.reading(), collected),
                String.join(" ", expected.words()),
                String.join(" ", collected.words()),
                expected.reading().value(),
                accepted.isEmpty() ? "-" : value(accepted.get(0)),
                WordErrors.between(expected.words(), collected.words()),
                expected.reading().isReading(),
                expected.groups());
    }

    private VisitSession freshSession() {
        Visit visit = Visit.begun(1, new PatientCode("evaluation"), OffsetDateTime.now());
        return new VisitSession(
                visit,
                event -> {},
                (reading, state) -> validator.judge(reading, state, History.none()),
                SeriesPlans.standard().usual(),
                ClinicSettings.defaults(),
                new Context(Optional.of(Side.RIGHT), Mode.ACTIVE),
                Clock.systemDefaultZone());
    }

    private static Verdict verdict(Fields expected, Collected collected) {
        List<Reading> accepted = collected.accepted();
        if (!accepted.isEmpty()) {
            boolean right = accepted.size() == 1 && expected.isReading() && matches(expected, accepted.get(0));
            return right ? Verdict.RIGHT : Verdict.WRONG;
        }
        if (collected.asked) {
            return Verdict.ASKED;
        }
        return expected.isReading() ? Verdict.REFUSED : Verdict.RIGHT;
    }

    private static boolean matches(Fields expected, Reading reading) {
        boolean mode = expected.mode().equals("-")
                ? reading.mode() == Mode.ACTIVE
                : reading.mode().word().equals(expected.mode());
        return mode
                && joint(reading).equals(expected.joint())
                && motion(reading).equals(expected.motion())
                && value(reading).equals(expected.value())
                && (expected.unit().equals("-") || unit(reading).equals(expected.unit()));
    }

    private static String joint(Reading reading) {
        return reading.measure().dimension() == Dimension.GAP
                ? "tip gap"
                : reading.measure().site().code();
    }

    private static String motion(Reading reading) {
        if (reading.measure().motion() == Motion.OPPOSITION_GAP) {
            return reading.measure().site().code().replace(" tip", "");
        }
        if (reading.value() instanceof Value.Extension extension) {
            return switch (extension.kind()) {
                case DEFICIT -> "extension deficit";
                case NEUTRAL -> "neutral";
                case HYPEREXTENSION -> "hyperextension";
            };
        }
        return reading.measure().motion().words();
    }

    private static String value(Reading reading) {
        return ValueForm.of(reading.value())
                .number()
                .map(BigDecimal::toPlainString)
                .orElse("-");
    }

    private static String unit(Reading reading) {
        return reading.value()
                .length()
                .map(distance -> distance.unit().symbol())
                .orElse("deg");
    }
}
