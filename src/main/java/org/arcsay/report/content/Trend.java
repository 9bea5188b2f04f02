package org.arcsay.report.content;

import java.time.OffsetDateTime;
import java.time.format.DateTimeFormatter;
import java.util.List;
import org.arcsay.model.Reading;
import org.arcsay.model.Slot;

/**
 * One slot over the visits.
 *
 * @param slot the side, measure and mode
 * @param points visits in which it has a number, oldest first, at least one
 */
public record Trend(Slot slot, List<Point> points) {
    public Trend {
        points = List.copyOf(points);
    }

    /**
     * One visit.
     *
     * @param at when the visit began
     * @param reading the reading that stands for the visit
     */
    public record Point(OffsetDateTime at, Reading reading) {
        String words() {
            return DateTimeFormatter.ISO_LOCAL_DATE.format(at) + " "
                    + reading.value().words();
        }
    }

    /** The same as text: every visit, or the first and the last ones when there are many. */
    public String words() {
        return slot.words() + ": "
                + Shortened.join(points.stream().map(Point::words).toList());
    }
}
