package org.arcsay.review;

/** Where a row of the review stands, in the reviewer's words. */
public enum RowState {
    /** The last change to this row could not be stored. */
    NOT_SAVED("Not saved"),
    /** Waits for an answer: accept as said, correct or reject. */
    HELD("Held, needs an answer"),
    /** Has a finding and needs a confirmation of its own. */
    DOUBTFUL("Doubtful, check it"),
    /** Plausible and not yet confirmed. */
    OPEN("To confirm"),
    CONFIRMED("Confirmed"),
    /** Taken back or rejected; shown in the history only. */
    REJECTED("Rejected");

    private final String words;

    RowState(String words) {
        this.words = words;
    }

    public String words() {
        return words;
    }
}
