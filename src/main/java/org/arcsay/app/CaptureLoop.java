package org.arcsay.app;

import java.time.Duration;
import java.util.List;
import java.util.Optional;
import org.arcsay.audio.AudioException;
import org.arcsay.audio.AudioSource;
import org.arcsay.model.Heard;
import org.arcsay.model.Utterance;
import org.arcsay.model.Versions;
import org.arcsay.parser.Joining;
import org.arcsay.parser.Parser;
import org.arcsay.recogniser.Recogniser;
import org.arcsay.session.Outcome;
import org.arcsay.session.VisitSession;

/**
 * From sound to stored entries: one thread makes the recogniser, runs this loop and owns the session meanwhile; any thread may
 * stop it.
 */
public final class CaptureLoop {
    /** The recogniser looks at the sound in steps of 90 ms; larger blocks would add to that. */
    static final Duration BLOCK = Duration.ofMillis(50);

    private final Joining joining;
    private final VisitSession session;
    private final Versions versions;
    private final CaptureListener listener;
    private volatile boolean stopped;

    public CaptureLoop(Parser parser, VisitSession session, Versions versions, CaptureListener listener) {
        this.joining = new Joining(parser);
        this.session = session;
        this.versions = versions;
        this.listener = listener;
    }

    /**
     * Listens until the sound ends, the session is ended by voice, or it is stopped; the caller closes the session.
     *
     * @param recogniser made by the calling thread
     * @throws AudioException when the sound breaks off; everything understood before is stored
     */
    public void run(AudioSource source, Recogniser recogniser) throws AudioException {
        short[] block = new short[(int) (BLOCK.toMillis() * source.sampleRate() / 1000)];
        try {
            int length = source.read(block);
            while (length >= 0 && !isDone()) {
                recogniser.accept(block, length).ifPresent(this::answer);
                listener.progress(source.position());
                length = source.read(block);
            }
        } finally {
            Optional<Utterance> rest = session.isEnded() ? Optional.empty() : recogniser.finish();
            rest.ifPresent(this::answer);
        }
    }

    private void answer(Utterance piece) {
        joining.next(piece).ifPresent(said -> answer(said, Heard.spoken(said.utterance(), versions)));
    }

    private void answer(Joining.Said said, Heard heard) {
        Outcome outcome = session.handle(said, heard);
        if (session.isPaused()) {
            joining.forget();
        }
        listener.answered(said.utterance(), said.meaning().command(), outcome);
    }

    /** Deals with typed text as if it had been spoken. To be called by the thread of the loop, also between two runs. */
    public void type(String text) {
        List<String> words = TypedSpeech.words(text);
        if (!words.isEmpty()) {
            answer(joining.whole(Utterance.typed(words)), Heard.typed(text, versions));
        }
    }

    /** Ends the run, at the next block of sound. */
    public void stop() {
        stopped = true;
    }

    /** Whether nothing more is to be heard. */
    public boolean isDone() {
        return stopped || session.isEnded();
    }
}
