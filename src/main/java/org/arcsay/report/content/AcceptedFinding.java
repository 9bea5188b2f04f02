package org.arcsay.report.content;

import org.arcsay.model.Entry;
import org.arcsay.model.Finding;

/**
 * A finding about an entry that counts, and how it was settled.
 *
 * @param entry the entry that was kept as said
 * @param finding what the rules had to say
 * @param by role or initials of who accepted it, or empty
 * @param why the reason given, or empty
 * @param settled whether somebody accepted or confirmed the entry; otherwise it still waits
 */
public record AcceptedFinding(Entry entry, Finding finding, String by, String why, boolean settled) {
    /** How it was settled, in words. */
    public String outcome() {
        if (!settled) {
            return "not yet confirmed";
        }
        return "kept as said" + (by.isBlank() ? "" : " by " + by) + (why.isBlank() ? "" : ": " + why);
    }
}
