package org.arcsay.app;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CompletionException;
import java.util.function.Function;
import org.arcsay.analysis.SeriesPlan;
import org.arcsay.audio.AudioException;
import org.arcsay.feedback.VoiceSettings;
import org.arcsay.grammar.SpokenGrammar;
import org.arcsay.model.PatientCode;
import org.arcsay.model.Visit;
import org.arcsay.parser.Parser;
import org.arcsay.recogniser.ModelException;
import org.arcsay.recogniser.SentencePause;
import org.arcsay.review.HomeActions;
import org.arcsay.review.HomeException;
import org.arcsay.review.MeasuringModel;
import org.arcsay.review.MeasuringStart;
import org.arcsay.review.ProtocolModel;
import org.arcsay.review.ReviewModel;
import org.arcsay.review.SettingsActions;
import org.arcsay.review.SoundTry;
import org.arcsay.session.VisitSession;
import org.arcsay.store.DataFolder;
import org.arcsay.store.KeptSound;
import org.arcsay.store.StoreException;

/** Used by the thread of the screen. What the screens ask for, done with the records, the microphone and the speech model. */
public final class Desk implements HomeActions, AutoCloseable {
    private static final int RECENT = 30;
    private static final String SOUND_KEPT =
            "The sound of this visit is kept until \u201carcsay purge-sound\u201d removes it. Tell the patient.";

    private final DataFolder folder;
    private final SpokenGrammar grammar;
    private final Function<Settings, Setup> preparing;
    private final CompletableFuture<Ears> ears;
    private final List<LiveMeasuring> begun = new ArrayList<>();
    private Setup setup;
    private Optional<DemoVisit> demo = Optional.empty();

    /**
     * What follows from the settings and may change with them.
     *
     * @param visits begins visits and opens reviews
     * @param microphones which there are
     * @param voice how answers sound
     * @param habits the usual series, and whether sound is kept
     */
    public record Setup(Visits visits, MicrophoneChoice microphones, VoiceSettings voice, Settings.Habits habits) {}

    /**
     * Loads the speech model meanwhile.
     *
     * @param model another model than the built-in one
     * @param settings as they are now
     * @param preparing what follows from settings
     */
    public Desk(
            DataFolder folder,
            SpokenGrammar grammar,
            Optional<Path> model,
            Settings settings,
            Function<Settings, Setup> preparing) {
        this.folder = folder;
        this.grammar = grammar;
        this.preparing = preparing;
        this.setup = preparing.apply(settings);
        this.ears = CompletableFuture.supplyAsync(() -> load(model, settings.pause()));
    }

    private Ears load(Optional<Path> model, SentencePause pause) {
        try {
            return Ears.open(folder.models(), model, grammar, pause);
        } catch (ModelException e) {
            throw new CompletionException(e);
        }
    }

    private Ears ears() throws ModelException {
        try {
            return ears.join();
        } catch (CompletionException e) {
            if (e.getCause() instanceof ModelException why) {
                throw why;
            }
            throw e;
        }
    }

    @Override
    public List<Visit> recent() throws HomeException {
        return stored(() -> setup.visits().store().recent(RECENT));
    }

    @Override
    public boolean knows(PatientCode patient) throws HomeException {
        return stored(() -> setup.visits().store().knows(patient));
    }

    @Override
    public List<String> microphones() {
        return setup.microphones().names();
    }

    @Override
    public Optional<String> usualMicrophone() {
        return setup.microphones().usual();
    }

    @Override
    public void rememberMicrophone(String name) {
        setup.microphones().remember(name);
    }

    @Override
    public SoundTry tryMicrophone(Optional<String> name, SoundTry.Listener listener) {
        return MicrophoneTry.start(setup.microphones(), name, listener);
    }

    @Override
    public ReviewModel review(long visit) throws HomeException {
        return review(setup.visits(), folder, visit);
    }

    private static ReviewModel review(Visits visits, DataFolder folder, long visit) throws HomeException {
        return stored(() -> visits.review(visits.store().visit(visit).orElseThrow(), "", folder.drafts()));
    }

    @Override
    public SeriesPlan usualPlan() {
        return setup.habits().plan();
    }

    @Override
    public ProtocolModel protocol(PatientCode patient) throws HomeException {
        return ProtocolModel.open(patient, new StoredProtocol(setup.visits()));
    }

    @Override
    public List<SeriesPlan> plans() {
        return setup.habits().plans();
    }

    @Override
    public SettingsActions settings() {
        return new DeskSettings(folder, settings -> setup = preparing.apply(settings));
    }

    @Override
    public MeasuringModel measure(MeasuringStart start) throws HomeException {
        Visits visits = setup.visits();
        Optional<KeptSound> sound = setup.habits().keepSound() ? Optional.of(folder.sound()) : Optional.empty();
        return begin(
                visits,
                start,
                new LiveMeasuring.Parts(
                        setup.microphones(),
                        start.microphone(),
                        setup.voice(),
                        this::ears,
                        sound,
                        sound.isPresent() ? SOUND_KEPT : "",
                        visit -> review(visits, folder, visit)));
    }

    @Override
    public MeasuringModel demo() throws HomeException {
        DemoVisit shown = stored(this::openDemo);
        Visits visits = shown.visits(grammar.version());
        try {
            return begin(
                    visits,
                    DemoVisit.start(),
                    new LiveMeasuring.Parts(
                            shown.player(),
                            Optional.empty(),
                            VoiceSettings.silent(),
                            this::ears,
                            Optional.empty(),
                            DemoVisit.REMARK,
                            visit -> review(visits, shown.home(), visit)));
        } catch (IOException | AudioException e) {
            throw new HomeException("The demo recording cannot be played: " + e.getMessage(), e);
        }
    }

    private DemoVisit openDemo() throws StoreException {
        if (demo.isEmpty()) {
            DemoVisit opened = DemoVisit.open();
            opened.addEarlierVisit(grammar);
            demo = Optional.of(opened);
        }
        return demo.get();
    }

    private MeasuringModel begin(Visits visits, MeasuringStart start, LiveMeasuring.Parts parts) throws HomeException {
        SeriesPlan plan = series(visits, start);
        LiveMeasuring live = stored(() -> {
            VisitSession session = visits.begin(start.patient(), start.side(), plan);
            return LiveMeasuring.start(
                    visits, session, new Parser(grammar), parts.remarking(visits.notice(session.visit())));
        });
        begun.add(live);
        return live.model();
    }

    private static SeriesPlan series(Visits visits, MeasuringStart start) throws HomeException {
        if (!start.plan().equals(SeriesPlan.RECHECK)) {
            return start.plan();
        }
        return stored(() -> visits.recheck(start.patient(), start.side()))
                .orElseThrow(() -> new HomeException(Visits.NOTHING_TO_RECHECK, null));
    }

    private interface Stored<T> {
        T make() throws StoreException;
    }

    private static <T> T stored(Stored<T> work) throws HomeException {
        try {
            return work.make();
        } catch (StoreException e) {
            throw new HomeException(String.valueOf(e.getMessage()), e);
        }
    }

    /** Waits for running captures to end, and frees the speech model where it could be loaded. */
    @Override
    @SuppressWarnings("FutureReturnValueIgnored")
    public void close() {
        for (LiveMeasuring live : begun) {
            live.closed();
            try {
                live.join();
            } catch (InterruptedException e) {
                Thread.currentThread().interrupt();
            }
        }
        demo.ifPresent(Desk::close);
        ears.thenAccept(Ears::close);
    }

    private static void close(DemoVisit shown) {
        try {
            shown.close();
        } catch (StoreException e) {
            // Nothing in it is to be kept.
        }
    }
}
