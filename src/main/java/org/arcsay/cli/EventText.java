package org.arcsay.cli;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.arcsay.model.JournalEvent;
import org.arcsay.model.JournalEvent.Confirmed;
import org.arcsay.model.JournalEvent.Ended;
import org.arcsay.model.JournalEvent.Rejected;
import org.arcsay.model.JournalEvent.Released;
import org.arcsay.model.JournalEvent.Remarked;
import org.arcsay.model.JournalEvent.Taken;
import org.arcsay.model.Remark;
import org.arcsay.model.Versions;
import org.jspecify.annotations.Nullable;

/** The changes of a visit as lines for people and as views for other programs. */
final class EventText {
    private static final String INDENT = "                                                ";

    private EventText() {}

    /** One change; what does not apply is null. */
    record EventView(
            int number,
            String at,
            String event,
            @Nullable Integer entry,
            @Nullable Integer replaces,
            @Nullable String reading,
            @Nullable String source,
            @Nullable String heard,
            @Nullable String remark,
            String by,
            String why,
            @Nullable Versions versions) {}

    static List<EventView> views(List<JournalEvent> events) {
        List<EventView> views = new ArrayList<>();
        for (JournalEvent event : events) {
            views.add(view(views.size() + 1, event));
        }
        return views;
    }

    private static EventView view(int number, JournalEvent event) {
        if (event instanceof Taken taken) {
            return new EventView(
                    number,
                    taken.at().toString(),
                    taken.held() ? "held" : "taken",
                    taken.entry(),
                    taken.replaces().isPresent() ? taken.replaces().getAsInt() : null,
                    taken.reading().words(),
                    taken.heard().source().name().toLowerCase(Locale.ROOT),
                    taken.heard().words(),
                    taken.remarks().isEmpty() ? null : remarks(taken.remarks()),
                    taken.by(),
                    taken.why(),
                    taken.heard().versions());
        }
        if (event instanceof Remarked remarked) {
            return plain(
                    number,
                    event,
                    "remarked",
                    remarked.entry(),
                    remarked.remark().words(),
                    remarked.by(),
                    "");
        }
        if (event instanceof Released released) {
            return plain(number, event, "kept as said", released.entry(), null, released.by(), released.why());
        }
        if (event instanceof Rejected rejected) {
            return plain(number, event, "rejected", rejected.entry(), null, rejected.by(), rejected.why());
        }
        if (event instanceof Confirmed confirmed) {
            return plain(number, event, "confirmed", confirmed.entry(), null, confirmed.by(), "");
        }
        return plain(number, event, "ended", null, null, ((Ended) event).by(), "");
    }

    private static String remarks(List<Remark> remarks) {
        return String.join("; ", remarks.stream().map(Remark::words).toList());
    }

    private static EventView plain(
            int number,
            JournalEvent event,
            String what,
            @Nullable Integer entry,
            @Nullable String remark,
            String by,
            String why) {
        return new EventView(number, event.at().toString(), what, entry, null, null, null, null, remark, by, why, null);
    }

    static List<String> lines(List<JournalEvent> events) {
        List<String> lines = new ArrayList<>();
        for (EventView view : views(events)) {
            lines.add(line(view));
            if (view.heard() != null && view.versions() != null) {
                lines.add(INDENT + ("typed".equals(view.source()) ? "typed: " : "heard: ") + view.heard());
                lines.add(INDENT + "grammar " + view.versions().grammar() + ", model "
                        + view.versions().model() + ", rules " + view.versions().rules());
            }
        }
        return lines;
    }

    private static String line(EventView view) {
        return String.format(Locale.ROOT, "%5d  %-35s  ", view.number(), view.at())
                + (view.entry() == null ? "visit " : "entry " + view.entry() + " ")
                + view.event()
                + (view.reading() == null ? "" : ": " + view.reading())
                + (view.replaces() == null ? "" : " [replaces " + view.replaces() + "]")
                + (view.remark() == null ? "" : " (" + view.remark() + ")")
                + (view.by().isEmpty() ? "" : ", by " + view.by())
                + (view.why().isEmpty() ? "" : ", because: " + view.why());
    }
}
