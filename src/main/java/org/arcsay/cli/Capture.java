package org.arcsay.cli;

import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.Optional;
import org.arcsay.analysis.SeriesPlan;
import org.arcsay.app.Ears;
import org.arcsay.app.LiveCapture;
import org.arcsay.app.Settings;
import org.arcsay.app.SoundKeeping;
import org.arcsay.app.Visits;
import org.arcsay.audio.AudioException;
import org.arcsay.audio.AudioQuality;
import org.arcsay.audio.AudioSource;
import org.arcsay.audio.LevelMeter;
import org.arcsay.feedback.FeedbackLevel;
import org.arcsay.feedback.NoSpeaker;
import org.arcsay.feedback.Speaker;
import org.arcsay.grammar.SpokenGrammar;
import org.arcsay.model.PatientCode;
import org.arcsay.model.Side;
import org.arcsay.model.Visit;
import org.arcsay.parser.Parser;
import org.arcsay.recogniser.ModelException;
import org.arcsay.recogniser.Recogniser;
import org.arcsay.session.VisitSession;
import org.arcsay.store.KeptSound;
import org.arcsay.store.StoreException;
import org.arcsay.store.VisitStore;

/**
 * One visit captured from one source of sound; shared by the commands that listen.
 *
 * @param patient whose visit it is
 * @param side the hand to begin with, if known
 * @param plan the series that is wanted
 * @param keptSound where the sound is kept, if the user wants that
 */
record Capture(
        PatientCode patient,
        Optional<Side> side,
        SeriesPlan plan,
        Settings settings,
        SpokenGrammar grammar,
        Optional<KeptSound> keptSound) {

    static Visits visits(VisitStore store, Settings settings, SpokenGrammar grammar) {
        return new Visits(store, settings.clinic(), settings.habits().customs(), grammar.version());
    }

    /** Loads the model and warns of words that it lacks. */
    Ears ears(Path cache, Optional<Path> model, PrintWriter err) throws ModelException {
        Ears ears = Ears.open(cache, model.or(settings::model), grammar, settings.pause());
        ears.warning().ifPresent(err::println);
        return ears;
    }

    /**
     * Listens to the end, and returns the visit as stored.
     *
     * @throws AudioException when the sound breaks off; the visit with everything understood before is stored
     */
    Visit listen(Ears ears, VisitStore store, AudioSource source, PrintWriter err)
            throws AudioException, StoreException {
        return listen(ears, store, source, new NoSpeaker(), FeedbackLevel.OFF, err);
    }

    /** As above, with answers by sound. */
    Visit listen(Ears ears, VisitStore store, AudioSource source, Speaker speaker, FeedbackLevel level, PrintWriter err)
            throws AudioException, StoreException {
        Visits visits = visits(store, settings, grammar);
        VisitSession session = visits.begin(patient, side, plan);
        visits.notice(session.visit()).ifPresent(err::println);
        LevelMeter meter = new LevelMeter(source.sampleRate());
        try (Recogniser recogniser = ears.recogniser(source.sampleRate());
                AudioSource heard = recorded(session.visit(), source, err)) {
            new LiveCapture(
                            new Parser(grammar),
                            session,
                            visits.versions(ears),
                            speaker,
                            level,
                            new ConsoleListener(err))
                    .run(meter.listeningTo(heard), recogniser);
        } finally {
            session.close();
        }
        meter.quality().warnings().stream().map(AudioQuality.Warning::sentence).forEach(err::println);
        return store.visit(session.visit().id()).orElseThrow();
    }

    private AudioSource recorded(Visit visit, AudioSource source, PrintWriter err) {
        return keptSound
                .map(sound -> SoundKeeping.of(
                        sound,
                        visit.id(),
                        source,
                        file -> err.println("KEEPING THE SOUND of this visit in " + file
                                + " until 'arcsay purge-sound'. Tell the patient."),
                        err::println))
                .orElse(source);
    }
}
