package org.arcsay.review;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import org.arcsay.model.PatientCode;
import org.arcsay.model.PatientProtocol;
import org.arcsay.model.PatientProtocol.RangeLimit;
import org.arcsay.model.Side;

/** What a patient's treatment protocol allows, to be shown and changed. Used by one thread. */
public final class ProtocolModel {
    private final PatientCode patient;
    private final Actions actions;
    private PatientProtocol protocol;
    private String message = "";

    /** Where protocols are kept. */
    public interface Actions {
        /** What holds now. */
        PatientProtocol now(PatientCode patient) throws HomeException;

        /**
         * Sets what holds from now on.
         *
         * @param statements as {@link PatientProtocol#parse} reads them
         * @param by role or initials, or empty
         * @throws HomeException saying what is not understood; nothing is changed then
         */
        PatientProtocol set(PatientCode patient, String statements, String by) throws HomeException;
    }

    private ProtocolModel(PatientCode patient, Actions actions, PatientProtocol protocol) {
        this.patient = patient;
        this.actions = actions;
        this.protocol = protocol;
    }

    public static ProtocolModel open(PatientCode patient, Actions actions) throws HomeException {
        return new ProtocolModel(patient, actions, actions.now(patient));
    }

    public PatientCode patient() {
        return patient;
    }

    /** What holds now. */
    public PatientProtocol protocol() {
        return protocol;
    }

    /** The range limits, one a line. */
    public String ranges() {
        return protocol.ranges().stream().map(RangeLimit::words).collect(Collectors.joining("\n"));
    }

    /** What became of the last change, or empty. */
    public String message() {
        return message;
    }

    /**
     * Keeps what was chosen.
     *
     * @param involved the hand under treatment, if it is known
     * @param ranges limits, one a line
     * @return whether it was kept; {@link #message} says why not
     */
    public boolean save(Optional<Side> involved, boolean passive, boolean resisted, String ranges, String by) {
        PatientProtocol chosen = new PatientProtocol(involved, passive, resisted, List.of());
        List<String> statements = new ArrayList<>(chosen.statements());
        statements.add(ranges);
        try {
            protocol = actions.set(patient, String.join("\n", statements), by.strip());
            message = "Kept. It holds for visits of " + patient + " that begin from now on: " + protocol.words() + ".";
            return true;
        } catch (HomeException e) {
            message = "Nothing was changed: " + e.getMessage();
            return false;
        }
    }
}
