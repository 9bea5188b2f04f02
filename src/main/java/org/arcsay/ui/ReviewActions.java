package org.arcsay.ui;

import org.arcsay.review.Draft;
import org.arcsay.review.Outcome;

/** What the panes of the review window can ask for. */
interface ReviewActions {
    void confirmSelected();

    void confirmAll();

    void editSelected();

    /** Opens the form with these fields; nothing is stored. */
    void edit(Draft draft);

    void addMissed();

    void askToReject();

    void askToKeep();

    /** Closes an open form and forgets what was half typed in it. */
    void cancel();

    void undo();

    /** Tells the outcome; a stored change also closes the open form. */
    void finish(Outcome outcome);
}
