package org.arcsay.app;

import java.util.Optional;
import org.arcsay.audio.AudioException;
import org.arcsay.audio.AudioSource;
import org.arcsay.model.Heard;
import org.arcsay.model.Utterance;
import org.arcsay.model.Versions;
import org.arcsay.parser.Command;
import org.arcsay.parser.Parser;
import org.arcsay.recogniser.Recogniser;
import org.arcsay.session.Outcome;
import org.arcsay.session.VisitSession;

/** From sound to stored entries: one thread makes the recogniser, runs this loop and owns the session meanwhile. */
public final class CaptureLoop {
    private static final int BLOCKS_PER_SECOND = 10;

    private final Recogniser recogniser;
    private final Parser parser;
    private final VisitSession session;
    private final Versions versions;
    private final CaptureListener listener;

    public CaptureLoop(
            Recogniser recogniser,
            Parser parser,
            VisitSession session,
            Versions versions,
            CaptureListener listener) {
        this.recogniser = recogniser;
        this.parser = parser;
        this.session = session;
        this.versions = versions;
        this.listener = listener;
    }

    /**
     * Listens until the sound ends or the session is ended by voice; the caller closes the session.
     *
     * @throws AudioException when the sound breaks off; everything understood before is stored
     */
    public void run(AudioSource source) throws AudioException {
        short[] block = new short[source.sampleRate() / BLOCKS_PER_SECOND];
        try {
            int length = source.read(block);
            while (length >= 0 && !session.isEnded()) {
                recogniser.accept(block, length).ifPresent(this::answer);
                listener.progress(source.position());
                length = source.read(block);
            }
        } finally {
            Optional<Utterance> rest = session.isEnded() ? Optional.empty() : recogniser.finish();
            rest.ifPresent(this::answer);
        }
    }

    /** Deals with one utterance; the listener is told what came of it. */
    public void answer(Utterance utterance) {
        Command command = parser.parse(utterance);
        Outcome outcome = session.handle(command, Heard.spoken(utterance, versions));
        listener.answered(utterance, command, outcome);
    }
}
