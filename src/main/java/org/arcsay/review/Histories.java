package org.arcsay.review;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.arcsay.model.Entry;
import org.arcsay.model.Heard;
import org.arcsay.model.JournalEvent;
import org.arcsay.model.JournalEvent.Confirmed;
import org.arcsay.model.JournalEvent.Rejected;
import org.arcsay.model.JournalEvent.Released;
import org.arcsay.model.JournalEvent.Remarked;
import org.arcsay.model.JournalEvent.Taken;

/** Tells the life of an entry in words. */
final class Histories {
    private Histories() {}

    /**
     * @param lineage the entry and those it replaces, earliest first
     * @param events the journal as far as it is known
     */
    static List<HistoryLine> of(List<Entry> lineage, List<JournalEvent> events) {
        List<HistoryLine> lines = new ArrayList<>();
        for (Entry entry : lineage) {
            lines.add(taken(entry, events));
            events.stream()
                    .flatMap(event -> later(entry.number(), event).stream())
                    .forEach(lines::add);
        }
        lines.sort(Comparator.comparing(HistoryLine::at));
        return lines;
    }

    private static HistoryLine taken(Entry entry, List<JournalEvent> events) {
        String how = entry.heard().source() == Heard.Source.VOICE ? "Heard " : "Typed ";
        String words = how + "\u201c" + entry.heard().words() + "\u201d: "
                + entry.reading().words();
        return events.stream()
                .filter(event -> event instanceof Taken taken && taken.entry() == entry.number())
                .map(Taken.class::cast)
                .findFirst()
                .map(taken -> new HistoryLine(taken.at(), words, taken.by(), taken.why()))
                .orElseGet(() -> new HistoryLine(entry.takenAt(), words, "", ""));
    }

    private static Optional<HistoryLine> later(int number, JournalEvent event) {
        if (event instanceof Remarked remarked && remarked.entry() == number) {
            return line(event, "Remark added: " + remarked.remark().words(), remarked.by(), "");
        }
        if (event instanceof Released released && released.entry() == number) {
            return line(event, "Kept as said", released.by(), released.why());
        }
        if (event instanceof Rejected rejected && rejected.entry() == number) {
            return line(event, "Rejected", rejected.by(), rejected.why());
        }
        if (event instanceof Confirmed confirmed && confirmed.entry() == number) {
            return line(event, "Confirmed", confirmed.by(), "");
        }
        return Optional.empty();
    }

    private static Optional<HistoryLine> line(JournalEvent event, String words, String by, String why) {
        return Optional.of(new HistoryLine(event.at(), words, by, why));
    }
}
