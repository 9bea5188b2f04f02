package org.arcsay.report.content;

/** How far an entry, or a whole report, may be relied on; the first four are states of an observation in HL7 FHIR R4. */
public enum Standing {
    /** Heard and stored, not yet confirmed by the professional. */
    PRELIMINARY("preliminary"),
    /** Confirmed by the professional. */
    FINAL("final"),
    /** Confirmed, and changed after it had been confirmed before. */
    AMENDED("amended"),
    /** Taken back; kept only as history. */
    ENTERED_IN_ERROR("entered-in-error"),
    /** Replaced by a later entry, which carries on its identity; kept only as history. */
    REPLACED("replaced");

    private final String code;

    Standing(String code) {
        this.code = code;
    }

    /** The lower-case code that exported files use. */
    public String code() {
        return code;
    }
}
