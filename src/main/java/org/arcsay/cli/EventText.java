package org.arcsay.cli;

import java.time.OffsetDateTime;
import java.time.format.DateTimeFormatter;
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
    private static final DateTimeFormatter SECOND = DateTimeFormatter.ofPattern("uuuu-MM-dd HH:mm:ssxxx", Locale.ROOT);

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

    /** The versions stand where they change. */
    static List<String> lines(List<JournalEvent> events) {
        List<String> lines = new ArrayList<>();
        Versions last = null;
        for (EventView view : views(events)) {
            if (view.versions() != null && !view.versions().equals(last)) {
                last = view.versions();
                lines.add("       grammar " + last.grammar() + ", model " + last.model() + ", rules " + last.rules());
            }
            lines.add(line(view));
        }
        return lines;
    }

    private static String line(EventView view) {
        return String.format(Locale.ROOT, "%5d  %s  ", view.number(), second(view.at()))
                + (view.entry() == null ? "visit " : "entry " + view.entry() + " ")
                + view.event()
                + (view.reading() == null ? "" : ": " + view.reading())
                + (view.replaces() == null ? "" : " [replaces " + view.replaces() + "]")
                + (view.remark() == null ? "" : " (" + view.remark() + ")")
                + (view.heard() == null ? "" : ", " + heard(view.source()) + " \"" + view.heard() + "\"")
                + (view.by().isEmpty() ? "" : ", by " + view.by())
                + (view.why().isEmpty() ? "" : ", because: " + view.why());
    }

    private static String heard(@Nullable String source) {
        return "typed".equals(source) ? "typed" : "heard";
    }

    private static String second(String at) {
        return OffsetDateTime.parse(at).format(SECOND);
    }
}
