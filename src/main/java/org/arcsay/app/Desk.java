package org.arcsay.app;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CompletionException;
import org.arcsay.feedback.VoiceSettings;
import org.arcsay.grammar.SpokenGrammar;
import org.arcsay.model.PatientCode;
import org.arcsay.model.Visit;
import org.arcsay.parser.Parser;
import org.arcsay.recogniser.ModelException;
import org.arcsay.review.HomeActions;
import org.arcsay.review.HomeException;
import org.arcsay.review.MeasuringModel;
import org.arcsay.review.MeasuringStart;
import org.arcsay.review.ReviewModel;
import org.arcsay.review.SoundTry;
import org.arcsay.store.DataFolder;
import org.arcsay.store.StoreException;

/** Used by the thread of the screen. What the screens ask for, done with the records, the microphone and the speech model. */
public final class Desk implements HomeActions, AutoCloseable {
    private static final int RECENT = 30;

    private final DataFolder folder;
    private final Visits visits;
    private final SpokenGrammar grammar;
    private final MicrophoneChoice microphones;
    private final VoiceSettings voice;
    private final CompletableFuture<Ears> ears;
    private final List<LiveMeasuring> begun = new ArrayList<>();

    /**
     * Loads the speech model meanwhile.
     *
     * @param model another model than the built-in one
     */
    public Desk(
            DataFolder folder,
            Visits visits,
            SpokenGrammar grammar,
            Optional<Path> model,
            MicrophoneChoice microphones,
            VoiceSettings voice) {
        this.folder = folder;
        this.visits = visits;
        this.grammar = grammar;
        this.microphones = microphones;
        this.voice = voice;
        this.ears = CompletableFuture.supplyAsync(() -> load(model));
    }

    private Ears load(Optional<Path> model) {
        try {
            return Ears.open(folder.models(), model, grammar);
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
        return stored(() -> visits.store().recent(RECENT));
    }

    @Override
    public boolean knows(PatientCode patient) throws HomeException {
        return stored(() -> visits.store().knows(patient));
    }

    @Override
    public List<String> microphones() {
        return microphones.names();
    }

    @Override
    public Optional<String> usualMicrophone() {
        return microphones.usual();
    }

    @Override
    public void rememberMicrophone(String name) {
        microphones.remember(name);
    }

    @Override
    public SoundTry tryMicrophone(Optional<String> name, SoundTry.Listener listener) {
        return MicrophoneTry.start(microphones, name, listener);
    }

    @Override
    public ReviewModel review(long visit) throws HomeException {
        return stored(() -> visits.review(visits.store().visit(visit).orElseThrow(), "", folder.drafts()));
    }

    @Override
    public MeasuringModel measure(MeasuringStart start) throws HomeException {
        LiveMeasuring live = stored(() -> LiveMeasuring.start(
                visits,
                visits.begin(start.patient(), start.side(), start.plan()),
                new Parser(grammar),
                new LiveMeasuring.Parts(microphones, start.microphone(), voice, this::ears, this::review)));
        begun.add(live);
        return live.model();
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
        ears.thenAccept(Ears::close);
    }
}
