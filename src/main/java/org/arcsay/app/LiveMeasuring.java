package org.arcsay.app;

import java.time.Duration;
import java.util.Optional;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.concurrent.TimeUnit;
import java.util.function.Consumer;
import org.arcsay.audio.AudioException;
import org.arcsay.audio.AudioSource;
import org.arcsay.audio.CaptureStatus;
import org.arcsay.audio.LevelMeter;
import org.arcsay.audio.Microphone;
import org.arcsay.feedback.OpenedSpeaker;
import org.arcsay.feedback.Speaker;
import org.arcsay.feedback.VoiceSettings;
import org.arcsay.model.Utterance;
import org.arcsay.model.Versions;
import org.arcsay.parser.Command;
import org.arcsay.parser.Parser;
import org.arcsay.recogniser.ModelException;
import org.arcsay.recogniser.Recogniser;
import org.arcsay.recogniser.RecogniserException;
import org.arcsay.review.HomeException;
import org.arcsay.review.Listening;
import org.arcsay.review.MeasuringActions;
import org.arcsay.review.MeasuringModel;
import org.arcsay.review.MeasuringState;
import org.arcsay.review.MeasuringState.Loudness;
import org.arcsay.review.ReviewModel;
import org.arcsay.session.Outcome;
import org.arcsay.session.VisitSession;
import org.arcsay.store.KeptSound;

/**
 * One visit captured live behind the measuring screen; any thread may ask for something. The capture runs on a thread of its
 * own, which owns recogniser and session, and does what is typed between two blocks of sound.
 *
 * <p>Without a microphone or a speech model the visit goes on by typing, and a microphone that appears later is taken.
 */
final class LiveMeasuring implements MeasuringActions {
    private static final long RETRY_MILLIS = 2000;
    private static final long TYPING_WAIT_MILLIS = 100;
    private static final String RECORDING_OVER =
            "The recording has come to its end. Go on by typing, or end the session.";

    private static final CaptureStatus NO_MICROPHONE = new CaptureStatus(CaptureStatus.State.ENDED, Duration.ZERO);

    private final Visits visits;
    private final VisitSession session;
    private final Parser parser;
    private final Parts parts;
    private final MeasuringModel model;
    private final BlockingQueue<Consumer<LiveCapture>> asked = new LinkedBlockingQueue<>();
    private final Thread thread = new Thread(this::run, "measuring");

    /**
     * What the capture works with.
     *
     * @param microphones opens the one that was chosen
     * @param microphone its name, or empty for the usual one
     * @param voice how answers sound
     * @param ears waits for the speech model
     * @param sound where the sound of the visit is kept, if it is to be
     * @param remark what is always shown beside the visit; may be empty
     * @param reviews opens the review of a visit
     */
    record Parts(
            MicrophoneChoice microphones,
            Optional<String> microphone,
            VoiceSettings voice,
            EarsSource ears,
            Optional<KeptSound> sound,
            String remark,
            Reviews reviews) {
        /** The same with one more thing to show beside the visit. */
        Parts remarking(Optional<String> more) {
            String all = (more.orElse("") + " " + remark).strip();
            return new Parts(microphones, microphone, voice, ears, sound, all, reviews);
        }
    }

    /** Gives the speech model, which may still be loading. */
    @FunctionalInterface
    interface EarsSource {
        Ears get() throws ModelException;
    }

    /** Opens reviews. */
    @FunctionalInterface
    interface Reviews {
        ReviewModel open(long visit) throws HomeException;
    }

    private LiveMeasuring(Visits visits, VisitSession session, Parser parser, Parts parts) {
        this.visits = visits;
        this.session = session;
        this.parser = parser;
        this.parts = parts;
        this.model = new MeasuringModel(MeasuringState.starting(session), this);
    }

    /** Starts to capture a visit that has begun; from now on the session belongs to the capture. */
    static LiveMeasuring start(Visits visits, VisitSession session, Parser parser, Parts parts) {
        LiveMeasuring live = new LiveMeasuring(visits, session, parser, parts);
        live.thread.start();
        return live;
    }

    MeasuringModel model() {
        return model;
    }

    @Override
    public void say(String words) {
        asked.add(capture -> capture.type(words));
    }

    @Override
    public String remark() {
        return parts.remark();
    }

    @Override
    public void closed() {
        asked.add(LiveCapture::stop);
    }

    @Override
    public ReviewModel review() throws HomeException {
        return parts.reviews().open(model.state().visit());
    }

    /** Waits until everything is stored and every device let go. */
    void join() throws InterruptedException {
        thread.join();
    }

    // ---- the capture's own thread ----

    private void run() {
        OpenedSpeaker opened = OpenedSpeaker.open(parts.voice());
        try (Speaker speaker = opened.speaker()) {
            opened.notice().ifPresent(notice -> model.update(state -> state.with(Listening.STARTING, notice)));
            listen(speaker, opened.notice().orElse(""));
        } finally {
            session.close();
            model.update(state -> state.with(Listening.ENDED, ""));
        }
    }

    private void listen(Speaker speaker, String notice) {
        try {
            Ears ears = parts.ears().get();
            Run run = new Run(
                    speaker,
                    visits.versions(ears),
                    (notice + " " + ears.warning().orElse("")).strip());
            while (!run.capture.isDone()) {
                run.hear(ears);
            }
        } catch (ModelException | RecogniserException e) {
            new Run(speaker, visits.versions(), notice).typeOn(String.valueOf(e.getMessage()), Long.MAX_VALUE);
        }
    }

    /** Follows the capture and shows it. Used by the capture's thread. */
    private final class Run implements CaptureListener {
        private final Speaker speaker;
        private String notice;
        private final LiveCapture capture;
        private Optional<Microphone> microphone = Optional.empty();
        private Optional<Recogniser> recogniser = Optional.empty();
        private LevelMeter meter = new LevelMeter(1);

        Run(Speaker speaker, Versions versions, String notice) {
            this.speaker = speaker;
            this.notice = notice;
            capture = new LiveCapture(
                    parser, session, versions, speaker, parts.voice().level(), this);
        }

        void hear(Ears ears) {
            try (Microphone opened = parts.microphones().open(parts.microphone());
                    AudioSource heard = recorded(opened);
                    Recogniser made = ears.recogniser(opened.sampleRate())) {
                microphone = Optional.of(opened);
                recogniser = Optional.of(made);
                meter = new LevelMeter(opened.sampleRate());
                capture.run(meter.listeningTo(heard), made);
                typeOn(RECORDING_OVER, Long.MAX_VALUE);
            } catch (AudioException e) {
                typeOn(String.valueOf(e.getMessage()), RETRY_MILLIS);
            }
        }

        private AudioSource recorded(AudioSource source) {
            return parts.sound()
                    .map(sound ->
                            SoundKeeping.of(sound, session.visit().id(), source, file -> {}, lost -> notice = lost))
                    .orElse(source);
        }

        /** Typing only, for a while or until the session ends. */
        void typeOn(String why, long millis) {
            microphone = Optional.empty();
            long began = System.nanoTime();
            while (!capture.isDone() && TimeUnit.NANOSECONDS.toMillis(System.nanoTime() - began) < millis) {
                show(session.isPaused() ? Listening.PAUSED : Listening.TYPING, Loudness.SILENT, why);
                try {
                    Consumer<LiveCapture> next = asked.poll(TYPING_WAIT_MILLIS, TimeUnit.MILLISECONDS);
                    if (next != null) {
                        next.accept(capture);
                    }
                } catch (InterruptedException e) {
                    capture.stop();
                }
            }
        }

        @Override
        public void answered(Utterance utterance, Command command, Outcome outcome) {
            model.update(state -> state.answered(session, utterance.text(), outcome));
        }

        @Override
        public void progress(Duration position) {
            for (Consumer<LiveCapture> next = asked.poll(); next != null; next = asked.poll()) {
                next.accept(capture);
            }
            CaptureStatus status = microphone.map(Microphone::status).orElse(NO_MICROPHONE);
            String trouble = Notices.of(status);
            boolean silent = status.state() != CaptureStatus.State.LISTENING;
            Loudness level = silent ? Loudness.SILENT : Notices.loudness(meter.level());
            show(listening(status.state()), level, trouble.isEmpty() ? notice : trouble);
        }

        private Listening listening(CaptureStatus.State sound) {
            if (session.isEnded()) {
                return Listening.ENDED;
            }
            if (session.isPaused()) {
                return Listening.PAUSED;
            }
            if (sound == CaptureStatus.State.NO_SIGNAL) {
                return Listening.NO_SIGNAL;
            }
            if (sound == CaptureStatus.State.DEVICE_LOST) {
                return Listening.DEVICE_LOST;
            }
            if (speaker.sounding()) {
                return Listening.ANSWERING;
            }
            return recogniser.flatMap(Recogniser::partial).isPresent() ? Listening.HEARING : Listening.LISTENING;
        }

        private void show(Listening listening, Loudness level, String sentence) {
            MeasuringState shown = model.state();
            if (shown.listening() != listening
                    || !shown.notice().equals(sentence)
                    || !shown.level().looksLike(level)) {
                model.update(state -> state.with(listening, sentence).with(level));
            }
        }
    }
}
