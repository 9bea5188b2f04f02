package org.arcsay.model;

import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalInt;

/**
 * One reading of a visit with its state, as the journal of the visit leads to it.
 *
 * @param number 1, 2, 3 … in the order in which entries were taken
 * @param reading the clinical content
 * @param status where it stands
 * @param remarks pain and quality, in the order in which they were said
 * @param findings what the rules had to say when it was taken
 * @param heard where it came from
 * @param takenAt when, with the offset of the local clock
 * @param replaces the number of the entry that this one corrects, if any
 */
public record Entry(
        int number,
        Reading reading,
        EntryStatus status,
        List<Remark> remarks,
        List<Finding> findings,
        Heard heard,
        OffsetDateTime takenAt,
        OptionalInt replaces) {
    public Entry {
        remarks = List.copyOf(remarks);
        findings = List.copyOf(findings);
    }

    public Entry withStatus(EntryStatus next) {
        return new Entry(number, reading, next, remarks, findings, heard, takenAt, replaces);
    }

    public Entry withRemark(Remark remark) {
        List<Remark> more = new ArrayList<>(remarks);
        more.add(remark);
        return new Entry(number, reading, status, more, findings, heard, takenAt, replaces);
    }

    public boolean counts() {
        return status.counts();
    }

    /** Whether anything about this entry asks for a second look before it is confirmed. */
    public boolean doubtful() {
        return status == EntryStatus.HELD || findings.stream().anyMatch(f -> f.severity() != Severity.NOTE);
    }
}
