package org.arcsay.model;

/** How much a finding matters. No severity ever changes a value. */
public enum Severity {
    /** Worth a remark in the report. */
    NOTE,
    /** Unusual: the entry is kept and flagged, and the therapist is asked once. */
    ASK,
    /** Cannot be true as heard, or contradicts another entry: the entry is held until it is answered. */
    HOLD
}
