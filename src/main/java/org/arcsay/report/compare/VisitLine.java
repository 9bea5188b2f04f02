package org.arcsay.report.compare;

import java.time.OffsetDateTime;
import java.time.format.DateTimeFormatter;
import java.util.Locale;
import org.arcsay.report.content.VisitRecord;

/**
 * A visit in a list.
 *
 * @param id its number
 * @param startedAt when it began
 * @param words date, number of readings and standing
 */
public record VisitLine(long id, OffsetDateTime startedAt, String words) {
    private static final DateTimeFormatter DAY = DateTimeFormatter.ofPattern("d MMM uuuu, HH:mm", Locale.ENGLISH);

    static VisitLine of(VisitRecord record) {
        int readings = record.visit().counting().size();
        return new VisitLine(
                record.visit().id(),
                record.visit().startedAt(),
                DAY.format(record.visit().startedAt()) + "\n" + readings
                        + (readings == 1 ? " reading, " : " readings, ")
                        + record.standing().code());
    }
}
