package org.arcsay.model;

/** Where an entry stands on its way from being heard to being final. */
public enum EntryStatus {
    /** Heard and stored, but it contradicts something; waits for an answer or for review. */
    HELD,
    /** Heard, plausible and stored; not final until it is reviewed. */
    UNCONFIRMED,
    /** Reviewed and confirmed. */
    CONFIRMED,
    /** Taken back or rejected; kept in the history. */
    REJECTED,
    /** Replaced by a later entry; kept in the history. */
    SUPERSEDED;

    /** Whether the entry still counts as a reading of the visit. */
    public boolean counts() {
        return this == HELD || this == UNCONFIRMED || this == CONFIRMED;
    }
}
