package org.arcsay.app;

import java.time.Duration;
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
import org.arcsay.parser.Parser;
import org.arcsay.recogniser.Recogniser;
import org.arcsay.session.Outcome;
import org.arcsay.session.VisitSession;

/**
 * Listening with answers by sound: one thread makes the recogniser and runs this, another captures, and the speaker plays on
 * its own. Every answer sounds after what it names is stored, and our own voice never reaches the recogniser.
 */
public final class LiveCapture {
    private final Speaker speaker;
    private final VisitSession session;
    private final Responder responder;
    private final CaptureListener listener;
    private final CaptureLoop loop;

    /**
     * @param level how much is said
     * @param listener is told of every utterance after its answer has begun
     */
    public LiveCapture(
            Recogniser recogniser,
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
        this.loop = new CaptureLoop(recogniser, parser, session, versions, new Answering());
    }

    /**
     * Listens until the sound ends or the session is ended by voice.
     *
     * @throws AudioException when the sound breaks off; everything understood before is stored
     */
    public void run(AudioSource source) throws AudioException {
        speaker.answer(Answer.of(Earcon.LISTENING, Sentence.of("listening")));
        loop.run(new GatedSource(source, new EchoGate(speaker, source.sampleRate())));
    }

    private final class Answering implements CaptureListener {
        @Override
        public void answered(Utterance utterance, Command command, Outcome outcome) {
            Answer answer = responder.answer(utterance, outcome, session.question());
            if (!answer.isSilent()) {
                speaker.answer(answer);
            }
            listener.answered(utterance, command, outcome);
        }

        @Override
        public void progress(Duration position) {
            listener.progress(position);
        }
    }
}
