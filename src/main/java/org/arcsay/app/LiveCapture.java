package org.arcsay.app;

import java.time.Duration;
import java.util.Optional;
import org.arcsay.audio.AudioException;
import org.arcsay.audio.AudioSource;
import org.arcsay.feedback.Answer;
import org.arcsay.feedback.Earcon;
import org.arcsay.feedback.EchoGate;
import org.arcsay.feedback.FeedbackLevel;
import org.arcsay.feedback.Responder;
import org.arcsay.feedback.Sentence;
import org.arcsay.feedback.Speaker;
import org.arcsay.model.Utterance;
import org.arcsay.model.Versions;
import org.arcsay.parser.Command;
import org.arcsay.parser.Joining;
import org.arcsay.parser.Parser;
import org.arcsay.recogniser.Recogniser;
import org.arcsay.session.Outcome;
import org.arcsay.session.VisitSession;

/**
 * Listening with answers by sound: one thread makes the recogniser and runs this, another captures, and the speaker plays on
 * its own. Every answer sounds after what it names is stored, and our own voice never reaches the recogniser.
 */
public final class LiveCapture {
    private static final Duration PATIENCE = Duration.ofSeconds(4);

    private final Speaker speaker;
    private final VisitSession session;
    private final Responder responder;
    private final CaptureListener listener;
    private final CaptureLoop loop;
    private Optional<EchoGate> gate = Optional.empty();

    /**
     * @param level how much is said
     * @param listener is told of every utterance after its answer has begun
     */
    public LiveCapture(
            Parser parser,
            VisitSession session,
            Versions versions,
            Speaker speaker,
            FeedbackLevel level,
            CaptureListener listener) {
        this.speaker = speaker;
        this.session = session;
        this.responder = new Responder(level);
        this.listener = listener;
        this.loop = new CaptureLoop(parser, session, versions, new Answering());
    }

    /**
     * Listens until the sound ends, the session is ended by voice, or it is stopped.
     *
     * @param recogniser made by the calling thread
     * @throws AudioException when the sound breaks off; everything understood before is stored
     */
    public void run(AudioSource source, Recogniser recogniser) throws AudioException {
        speaker.answer(Answer.of(Earcon.LISTENING, Sentence.of("listening")));
        EchoGate opened = new EchoGate(speaker, source.sampleRate());
        gate = Optional.of(opened);
        loop.run(new GatedSource(source, opened), recogniser);
    }

    /** Deals with typed text as if it had been spoken. To be called by the thread that listens, also between two runs. */
    public void type(String text) {
        loop.type(text);
    }

    /** Stops listening soon; any thread may call this. */
    public void stop() {
        loop.stop();
    }

    /** Whether nothing more is to be heard. */
    public boolean isDone() {
        return loop.isDone();
    }

    /** An answer waits while the user goes on speaking: what comes may belong to the same sentence and change the answer. */
    private final class Answering implements CaptureListener {
        private Optional<Answer> waiting = Optional.empty();
        private Duration since = Duration.ZERO;
        private Duration lastSpeech = Duration.ZERO;

        @Override
        public void answered(Utterance utterance, Command command, Outcome outcome) {
            Answer answer = responder.answer(utterance, outcome, session.question());
            waiting = Optional.empty();
            if (!answer.isSilent()) {
                if (speaksOn()) {
                    waiting = Optional.of(answer);
                    since = lastSpeech;
                } else {
                    speaker.answer(answer);
                }
            }
            listener.answered(utterance, command, outcome);
        }

        private boolean speaksOn() {
            return gate.filter(EchoGate::hearsSpeech).isPresent();
        }

        @Override
        public void progress(Duration position) {
            if (speaksOn()) {
                lastSpeech = position;
            }
            if (gate.filter(EchoGate::takeLost).isPresent()) {
                speaker.answer(responder.lost());
            }
            boolean quiet = position.minus(lastSpeech).compareTo(Joining.SOON) >= 0;
            boolean longEnough = position.minus(since).compareTo(PATIENCE) >= 0;
            if (waiting.isPresent() && (quiet || longEnough)) {
                speaker.answer(waiting.get());
                waiting = Optional.empty();
            }
            listener.progress(position);
        }
    }
}
