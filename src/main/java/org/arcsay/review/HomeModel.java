package org.arcsay.review;

import java.util.List;
import java.util.Optional;
import org.arcsay.model.EntryStatus;
import org.arcsay.model.PatientCode;
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

    /** Begins a visit for a code that is in the records; a code that is not is asked about first, since it may be a slip. */
    public Optional<MeasuringModel> measure(String typed) {
        newPatient = Optional.empty();
        Optional<PatientCode> code = code(typed.strip());
        return code.flatMap(patient -> attempt(() -> {
            if (actions.knows(patient)) {
                return actions.measure(patient);
            }
            newPatient = Optional.of(patient);
            throw new HomeException(
                    "'" + patient + "' has no visit here. Correct the code, or begin with it as a new patient.", null);
        }));
    }

    /** Begins a visit for the code that was asked about. */
    public Optional<MeasuringModel> measureNew() {
        Optional<PatientCode> patient = newPatient;
        newPatient = Optional.empty();
        return patient.flatMap(code -> attempt(() -> actions.measure(code)));
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
