package org.arcsay.review;

import java.util.List;
import java.util.Optional;
import org.arcsay.analysis.SeriesPlan;
import org.arcsay.model.PatientCode;
import org.arcsay.model.Visit;

/** What the start screen asks for; called by the thread of the screen. */
public interface HomeActions {
    /** Visits begun last, newest first. */
    List<Visit> recent() throws HomeException;

    /** Whether the patient has a visit in the records. */
    boolean knows(PatientCode patient) throws HomeException;

    /** Opens the review of a visit. */
    ReviewModel review(long visit) throws HomeException;

    /** Names of the microphones to choose from, the system's own choice first. */
    List<String> microphones();

    /** The one of {@link #microphones} that was chosen before, if it is there. */
    Optional<String> usualMicrophone();

    /** Chooses this one from the next time on. */
    void rememberMicrophone(String name);

    /**
     * Tries a microphone before measuring; nothing of it is kept.
     *
     * @param name one of {@link #microphones}, or empty for the system's choice
     */
    SoundTry tryMicrophone(Optional<String> name, SoundTry.Listener listener);

    /** The series that is proposed. */
    SeriesPlan usualPlan();

    /** What a patient's treatment protocol allows, behind its screen. */
    ProtocolModel protocol(PatientCode patient) throws HomeException;

    /** The series to choose from: those of the program and the clinic's own. */
    List<SeriesPlan> plans();

    /** The settings behind their screen. */
    SettingsActions settings();

    /** Plays the recorded visit that comes with the program; nothing of it goes into the records. */
    MeasuringModel demo() throws HomeException;

    /** Begins a visit and starts to listen. */
    MeasuringModel measure(MeasuringStart start) throws HomeException;
}
