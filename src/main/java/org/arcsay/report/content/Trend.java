package org.arcsay.report.content;

import java.time.OffsetDateTime;
import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.stream.Collectors;
import org.arcsay.model.Reading;
import org.arcsay.model.Slot;

/**
 * One slot over the visits.
 *
 * @param slot the side, measure and mode
 * @param points visits in which it has a number, oldest first, at least one
 */
public record Trend(Slot slot, List<Point> points) {
    private static final int WORDED_POINTS = 6;

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
            return DateTimeFormatter.ISO_LOCAL_DATE.format(at) + " " + reading.value().words();
        }
    }

    /** The same as text: every visit, or the first and the last ones when there are many. */
    public String words() {
        String all = slot.words() + ": ";
        if (points.size() <= WORDED_POINTS) {
            return all + join(points);
        }
        List<Point> recent = points.subList(points.size() - WORDED_POINTS + 1, points.size());
        int left = points.size() - WORDED_POINTS;
        return all + points.get(0).words() + "; " + left + " more; " + join(recent);
    }

    private static String join(List<Point> points) {
        return points.stream().map(Point::words).collect(Collectors.joining("; "));
    }
}
