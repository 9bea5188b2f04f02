package org.arcsay.app;

import java.time.Duration;
import org.arcsay.model.Utterance;
import org.arcsay.parser.Command;
import org.arcsay.session.Outcome;

/** Follows a capture. Called by the thread that recognises, so it must be quick. */
public interface CaptureListener {
    /** An utterance was heard and dealt with; what the outcome names as stored is stored. */
    void answered(Utterance utterance, Command command, Outcome outcome);

    /** How much sound was taken in so far. */
    default void progress(Duration position) {}
}
