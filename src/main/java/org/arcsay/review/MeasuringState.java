package org.arcsay.review;

import java.util.List;
import java.util.Optional;
import org.arcsay.analysis.Completeness;
import org.arcsay.model.Entry;
import org.arcsay.model.PatientCode;
import org.arcsay.model.Slot;
import org.arcsay.session.Context;
import org.arcsay.session.Outcome;
import org.arcsay.session.Question;
import org.arcsay.session.VisitSession;

/**
 * Everything that the measuring screen shows at one moment.
 *
 * @param visit number of the visit
 * @param patient whose visit it is
 * @param listening what happens with sound
 * @param level loudness of the last stretch of sound
 * @param context hand and mode that hold until changed
 * @param expected what the series expects next
 * @param last the last reading that counts
 * @param heard the words of the last utterance, or empty
 * @param outcome what came of it
 * @param question what is being asked
 * @param series what the series of the present hand has and lacks; empty until a hand is named
 * @param notice a sentence about the microphone, or empty
 */
public record MeasuringState(
        long visit,
        PatientCode patient,
        Listening listening,
        Loudness level,
        Context context,
        Optional<Slot> expected,
        Optional<Entry> last,
        String heard,
        Optional<Outcome> outcome,
        Optional<Question> question,
        Optional<Completeness> series,
        String notice) {

    /**
     * Loudness of a stretch of sound.
     *
     * @param share 0 for silence (60 dB or more below full scale) to 1 for full scale, even in decibels
     * @param clipped whether the sound was too loud for the microphone
     */
    public record Loudness(double share, boolean clipped) {
        private static final double RANGE = 60;
        private static final double VISIBLE = 0.04;

        public static final Loudness SILENT = new Loudness(0, false);

        public Loudness {
            if (!(share >= 0 && share <= 1)) {
                throw new IllegalArgumentException("loudness is 0 to 1, not " + share);
            }
        }

        /**
         * @param rms root mean square, 0 to 1 of full scale
         */
        public static Loudness ofRms(double rms, boolean clipped) {
            double decibels = 20 * Math.log10(Math.max(rms, 1e-9));
            return new Loudness(Math.max(0, Math.min(1, 1 + decibels / RANGE)), clipped);
        }

        /** Whether a screen would show both alike. */
        public boolean looksLike(Loudness other) {
            return clipped == other.clipped && Math.abs(share - other.share) < VISIBLE && words().equals(other.words());
        }

        public String words() {
            if (clipped) {
                return "too loud, move away a little";
            }
            return share < 0.25 ? "quiet" : "good";
        }
    }

    /** Before anything was heard. */
    public static MeasuringState starting(VisitSession session) {
        return of(session, Listening.STARTING, Loudness.SILENT, "", Optional.empty(), "");
    }

    /** After an utterance; to be called by the thread that owns the session. */
    public MeasuringState answered(VisitSession session, String words, Outcome answer) {
        if (answer instanceof Outcome.Ignored) {
            return this;
        }
        return of(session, settled(session), level, words, Optional.of(answer), notice);
    }

    public MeasuringState with(Loudness other) {
        return new MeasuringState(
                visit, patient, listening, other, context, expected, last, heard, outcome, question, series, notice);
    }

    /**
     * @param sentence what to tell about the microphone, or empty
     */
    public MeasuringState with(Listening other, String sentence) {
        return new MeasuringState(
                visit, patient, other, level, context, expected, last, heard, outcome, question, series, sentence);
    }

    /** Whether they differ in sound alone: its level, and what happens with it short of a pause or the end. */
    public boolean sameBesideSound(MeasuringState other) {
        return silent().equals(other.silent());
    }

    private MeasuringState silent() {
        boolean stands = listening == Listening.PAUSED || listening == Listening.ENDED;
        return with(Loudness.SILENT).with(stands ? listening : Listening.LISTENING, notice);
    }

    private static MeasuringState of(
            VisitSession session,
            Listening listening,
            Loudness level,
            String heard,
            Optional<Outcome> outcome,
            String notice) {
        return new MeasuringState(
                session.visit().id(),
                session.visit().patient(),
                listening,
                level,
                session.context(),
                session.next(),
                lastCounting(session.visit().counting()),
                heard,
                outcome,
                session.question(),
                session.completeness(),
                notice);
    }

    private Listening settled(VisitSession session) {
        if (session.isEnded()) {
            return Listening.ENDED;
        }
        if (session.isPaused()) {
            return Listening.PAUSED;
        }
        return listening == Listening.PAUSED || listening == Listening.STARTING ? Listening.LISTENING : listening;
    }

    private static Optional<Entry> lastCounting(List<Entry> counting) {
        return counting.isEmpty() ? Optional.empty() : Optional.of(counting.get(counting.size() - 1));
    }
}
