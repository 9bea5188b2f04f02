package org.arcsay.review;

import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.arcsay.analysis.SeriesPlan;
import org.arcsay.model.EntryStatus;
import org.arcsay.model.PatientCode;
import org.arcsay.model.Side;
import org.arcsay.model.Visit;

/** The start of the program, used by one thread: recent visits, and a new one for a patient code. */
public final class HomeModel {
    private final HomeActions actions;
    private List<Visit> recent = List.of();
    private String message = "";
    private Optional<PatientCode> newPatient = Optional.empty();

    public HomeModel(HomeActions actions) {
        this.actions = actions;
        refresh();
    }

    /** Reads the recent visits again. */
    public void refresh() {
        try {
            recent = actions.recent();
        } catch (HomeException unreadable) {
            message = String.valueOf(unreadable.getMessage());
        }
    }

    /** Newest first. */
    public List<Visit> recent() {
        return recent;
    }

    /** How far a visit is, in words. */
    public static String progress(Visit visit) {
        int total = visit.counting().size();
        if (total == 0) {
            return "No readings";
        }
        long confirmed = visit.counting().stream()
                .filter(entry -> entry.status() == EntryStatus.CONFIRMED)
                .count();
        return visit.isFinal()
                ? "Final, " + Sentences.count(total, "reading")
                : confirmed + " of " + Sentences.count(total, "reading") + " confirmed";
    }

    /** What went wrong or has to be answered, or empty. */
    public String message() {
        return message;
    }

    /** The code that is not in the records and waits to be confirmed as new. */
    public Optional<PatientCode> newPatient() {
        return newPatient;
    }

    public Optional<ReviewModel> review(long visit) {
        return attempt(() -> actions.review(visit));
    }

    /**
     * What is chosen on the screen.
     *
     * @param code as typed
     * @param side the hand to begin with; empty to say it
     * @param plan one of {@link #plans}
     * @param microphone one of {@link #microphones}, or empty for the system's choice
     */
    public record Choice(String code, Optional<Side> side, SeriesPlan plan, Optional<String> microphone) {}

    /** The series to choose from; the last of them repeats what was not normal at the last visit. */
    public List<SeriesPlan> plans() {
        return Stream.concat(actions.plans().stream(), Stream.of(SeriesPlan.RECHECK))
                .toList();
    }

    /** Names of the microphones to choose from. */
    public List<String> microphones() {
        return actions.microphones();
    }

    /** The one of them that was chosen before, if it is there. */
    public Optional<String> usualMicrophone() {
        return actions.usualMicrophone();
    }

    /** Tries a microphone; nothing of it is kept. */
    public SoundTry tryMicrophone(Optional<String> name, SoundTry.Listener listener) {
        return actions.tryMicrophone(name, listener);
    }

    /** Begins a visit for a code that is in the records; a code that is not is asked about first, since it may be a slip. */
    public Optional<MeasuringModel> measure(Choice choice) {
        newPatient = Optional.empty();
        return code(choice.code().strip())
                .flatMap(patient -> attempt(() -> {
                    if (actions.knows(patient)) {
                        return actions.measure(start(patient, choice));
                    }
                    newPatient = Optional.of(patient);
                    throw new HomeException(
                            "'" + patient + "' has no visit here. Correct the code, or begin with it as a new patient.",
                            null);
                }));
    }

    /** Begins a visit for the code that was asked about; one that was changed since is asked about again. */
    public Optional<MeasuringModel> measureNew(Choice choice) {
        Optional<PatientCode> asked = newPatient;
        if (asked.isEmpty() || !asked.equals(code(choice.code().strip()))) {
            return measure(choice);
        }
        newPatient = Optional.empty();
        return attempt(() -> actions.measure(start(asked.get(), choice)));
    }

    /** The series that is proposed. */
    public SeriesPlan usualPlan() {
        return actions.usualPlan();
    }

    /** The protocol of a code that is typed; its first visit may still be to come. */
    public Optional<ProtocolModel> protocol(String typed) {
        return code(typed.strip()).flatMap(patient -> attempt(() -> actions.protocol(patient)));
    }

    /** The settings as they are now. */
    public SettingsModel settings() {
        return new SettingsModel(actions.settings());
    }

    /** Plays the demo visit: the whole job without a microphone and a patient. */
    public Optional<MeasuringModel> demo() {
        newPatient = Optional.empty();
        return attempt(actions::demo);
    }

    private MeasuringStart start(PatientCode patient, Choice choice) {
        choice.microphone().ifPresent(actions::rememberMicrophone);
        return new MeasuringStart(patient, choice.side(), choice.plan(), choice.microphone());
    }

    private Optional<PatientCode> code(String typed) {
        if (typed.isEmpty()) {
            message = "Type the patient's code first. Use a code of your clinic and no name.";
            return Optional.empty();
        }
        try {
            return Optional.of(new PatientCode(typed));
        } catch (IllegalArgumentException notACode) {
            message = String.valueOf(notACode.getMessage()) + ".";
            return Optional.empty();
        }
    }

    private interface Attempt<T> {
        T make() throws HomeException;
    }

    private <T> Optional<T> attempt(Attempt<T> attempt) {
        try {
            message = "";
            return Optional.of(attempt.make());
        } catch (HomeException failed) {
            message = String.valueOf(failed.getMessage());
            return Optional.empty();
        }
    }
}
