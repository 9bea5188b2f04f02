package org.arcsay.cli;

import java.io.PrintWriter;
import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import org.arcsay.model.Entry;
import org.arcsay.model.EntryStatus;
import org.arcsay.model.Finding;
import org.arcsay.model.Remark;
import org.arcsay.model.Visit;

/** A visit as text for people. */
final class VisitText {
    private static final DateTimeFormatter MINUTE = DateTimeFormatter.ofPattern("uuuu-MM-dd HH:mm");

    private VisitText() {}

    static String line(Visit visit) {
        List<Entry> counting = visit.counting();
        long confirmed = counting.stream()
                .filter(entry -> entry.status() == EntryStatus.CONFIRMED)
                .count();
        long doubtful = counting.stream()
                .filter(entry -> entry.doubtful() && entry.status() != EntryStatus.CONFIRMED)
                .count();
        return String.format(
                Locale.ROOT,
                "%5d  %s  %-12s %3d readings, %d confirmed%s%s",
                visit.id(),
                visit.startedAt().format(MINUTE),
                visit.patient(),
                counting.size(),
                confirmed,
                doubtful == 0 ? "" : ", " + doubtful + " to look at",
                visit.isFinal() ? ", final" : "");
    }

    static void print(Visit visit, boolean history, PrintWriter out) {
        out.println(line(visit));
        for (Entry entry : visit.entries()) {
            if (history || entry.counts()) {
                print(entry, out);
            }
        }
    }

    static void print(Entry entry, PrintWriter out) {
        String remarks = entry.remarks().stream().map(Remark::words).collect(Collectors.joining("; "));
        out.println(String.format(
                Locale.ROOT,
                "%5d  %-11s %s%s%s",
                entry.number(),
                entry.status().name().toLowerCase(Locale.ROOT),
                entry.reading().words(),
                remarks.isEmpty() ? "" : " (" + remarks + ")",
                entry.replaces().isPresent() ? " [replaces " + entry.replaces().getAsInt() + "]" : ""));
        out.println("                     heard: " + entry.heard().words());
        for (Finding finding : entry.findings()) {
            out.println("                     " + finding.severity().name().toLowerCase(Locale.ROOT) + ": "
                    + finding.sentence());
        }
    }
}
