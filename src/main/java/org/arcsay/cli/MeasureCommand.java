package org.arcsay.cli;

import java.nio.file.Path;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.arcsay.analysis.SeriesPlan;
import org.arcsay.app.Desk;
import org.arcsay.app.MicrophoneChoice;
import org.arcsay.app.Settings;
import org.arcsay.app.Visits;
import org.arcsay.audio.AudioException;
import org.arcsay.feedback.FeedbackLevel;
import org.arcsay.grammar.SpokenGrammar;
import org.arcsay.model.PatientCode;
import org.arcsay.review.HomeModel;
import org.arcsay.review.MeasuringStart;
import org.arcsay.store.DataFolder;
import org.arcsay.store.VisitStore;
import org.arcsay.ui.HomeApp;
import org.arcsay.ui.Look;
import org.arcsay.ui.MeasuringApp;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** Opens the measuring screen, which listens and answers, and leads to the review. */
@Command(
        name = "measure",
        mixinStandardHelpOptions = true,
        description =
                "Opens the measuring screen: listens, answers by sound, shows what is understood and what is missing, and"
                        + " leads to the review. Without --patient it opens the first screen.")
final class MeasureCommand implements Callable<Integer> {
    @Mixin
    private Place place;

    @Option(
            names = "--patient",
            paramLabel = "CODE",
            description = "Begin at once for this patient code; never a name.")
    private @Nullable String patient;

    @Mixin
    private StartOptions start;

    @Option(
            names = "--recording",
            paramLabel = "FILE",
            description = "A WAV recording heard in real time instead of a microphone, to try the screen.")
    private @Nullable Path recording;

    @Option(
            names = "--from-menu",
            hidden = true,
            description = "Started without a terminal: shows in a window why the program cannot start.")
    private boolean fromMenu;

    @Mixin
    private ModelOption model;

    @Mixin
    private AnswerOptions answers;

    @Override
    public Integer call() throws Exception {
        answers.requireSane();
        Settings settings = place.settings();
        SpokenGrammar grammar = place.grammar();
        DataFolder folder = place.folder();
        Optional<MicrophoneChoice> played = recorded();
        try (VisitStore store = place.store();
                Desk desk = new Desk(
                        folder,
                        grammar,
                        model.folder().or(settings::model),
                        settings,
                        now -> setup(now, store, grammar.version(), played.orElseGet(() -> devices(folder, now))))) {
            try {
                open(desk, store, settings, grammar);
            } finally {
                place.backUp(store);
            }
        }
        return ExitCode.OK;
    }

    /** Whether nobody would see a message on standard error. */
    boolean isFromMenu() {
        return fromMenu;
    }

    private Desk.Setup setup(Settings settings, VisitStore store, String grammarVersion, MicrophoneChoice microphones) {
        return new Desk.Setup(
                new Visits(store, settings.clinic(), settings.habits().customs(), grammarVersion),
                microphones,
                answers.over(settings.answers(), FeedbackLevel.SHORT),
                settings.habits());
    }

    private void open(Desk desk, VisitStore store, Settings settings, SpokenGrammar grammar) throws Exception {
        Look look = place.look(grammar);
        if (patient == null) {
            HomeApp.run(new HomeModel(desk), look);
            return;
        }
        PatientCode code = Place.patientCode(patient);
        start.requireKnown(store, code, place.err());
        SeriesPlan plan = start.plan(settings, grammar, Capture.visits(store, settings, grammar), code);
        MeasuringApp.run(desk.measure(new MeasuringStart(code, start.side(), plan, start.microphone(settings))), look);
    }

    private static MicrophoneChoice devices(DataFolder folder, Settings settings) {
        return new MicrophoneChoice.Devices(folder.settings(), settings.microphone());
    }

    private Optional<MicrophoneChoice> recorded() throws AudioException {
        return recording == null ? Optional.empty() : Optional.of(MicrophoneChoice.Recording.of(recording));
    }
}
