package org.arcsay.store;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Duration;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalInt;
import org.arcsay.model.Finding;
import org.arcsay.model.Finding.LabelledNumber;
import org.arcsay.model.Heard;
import org.arcsay.model.JournalEvent;
import org.arcsay.model.Measure;
import org.arcsay.model.Mode;
import org.arcsay.model.Motion;
import org.arcsay.model.Placement;
import org.arcsay.model.Reading;
import org.arcsay.model.Remark;
import org.arcsay.model.Severity;
import org.arcsay.model.Side;
import org.arcsay.model.Versions;

/**
 * For one thread. Reads the events of one visit back.
 *
 * <p>Rows that make no event show as {@link RuntimeException}; the caller turns that into the news that the file is damaged.
 */
final class EventReader {
    private final Connection connection;
    private final long visit;

    EventReader(Connection connection, long visit) {
        this.connection = connection;
        this.visit = visit;
    }

    /** One row of a query about this visit. */
    private interface RowReader {
        void read(ResultSet row) throws SQLException;
    }

    List<JournalEvent> events() throws SQLException {
        Map<Long, List<Remark>> remarks = remarks();
        Map<Long, List<Finding>> findings = findings(numbers());
        List<JournalEvent> events = new ArrayList<>();
        each(
                "SELECT * FROM event LEFT JOIN reading ON reading.event = event.id WHERE visit = ? ORDER BY number",
                row -> events.add(event(row, remarks, findings)));
        return List.copyOf(events);
    }

    private void each(String query, RowReader reader) throws SQLException {
        try (PreparedStatement statement = connection.prepareStatement(query)) {
            statement.setLong(1, visit);
            try (ResultSet row = statement.executeQuery()) {
                while (row.next()) {
                    reader.read(row);
                }
            }
        }
    }

    private Map<Long, List<Remark>> remarks() throws SQLException {
        Map<Long, List<Remark>> byEvent = new HashMap<>();
        each(
                "SELECT remark.* FROM remark JOIN event ON event.id = remark.event WHERE visit = ? "
                        + "ORDER BY event, position",
                row -> add(
                        byEvent,
                        row.getLong("event"),
                        new RemarkColumns(row.getString("kind"), row.getString("text"), optional(row, "score"))
                                .remark()));
        return byEvent;
    }

    /** A finding's place: the event's row and the position in it. */
    private record FindingKey(long event, int position) {}

    private Map<FindingKey, List<LabelledNumber>> numbers() throws SQLException {
        Map<FindingKey, List<LabelledNumber>> byFinding = new HashMap<>();
        each(
                "SELECT n.* FROM finding_number n JOIN event ON event.id = n.event WHERE visit = ? "
                        + "ORDER BY n.event, n.finding, n.position",
                row -> add(
                        byFinding,
                        new FindingKey(row.getLong("event"), row.getInt("finding")),
                        new LabelledNumber(row.getString("label"), row.getString("number"), row.getString("unit"))));
        return byFinding;
    }

    private Map<Long, List<Finding>> findings(Map<FindingKey, List<LabelledNumber>> numbers) throws SQLException {
        Map<Long, List<Finding>> byEvent = new HashMap<>();
        each(
                "SELECT finding.* FROM finding JOIN event ON event.id = finding.event WHERE visit = ? "
                        + "ORDER BY event, position",
                row -> add(
                        byEvent,
                        row.getLong("event"),
                        new Finding(
                                row.getString("rule"),
                                Severity.valueOf(row.getString("severity")),
                                row.getString("sentence"),
                                numbers.getOrDefault(
                                        new FindingKey(row.getLong("event"), row.getInt("position")), List.of()),
                                ValueColumns.read(row).optional())));
        return byEvent;
    }

    private static <K, V> void add(Map<K, List<V>> map, K key, V value) {
        map.computeIfAbsent(key, unused -> new ArrayList<>()).add(value);
    }

    private static JournalEvent event(ResultSet row, Map<Long, List<Remark>> remarks, Map<Long, List<Finding>> findings)
            throws SQLException {
        long id = row.getLong("id");
        OffsetDateTime at = OffsetDateTime.parse(row.getString("at"));
        int entry = row.getInt("entry");
        String by = row.getString("by_whom");
        String why = row.getString("why");
        return switch (row.getString("kind")) {
            case "TAKEN" ->
                new JournalEvent.Taken(
                        at,
                        entry,
                        reading(row),
                        remarks.getOrDefault(id, List.of()),
                        findings.getOrDefault(id, List.of()),
                        heard(row),
                        row.getInt("held") == 1,
                        optional(row, "replaces"),
                        by,
                        why);
            case "REMARKED" -> new JournalEvent.Remarked(at, entry, first(remarks.getOrDefault(id, List.of()), id), by);
            case "RELEASED" -> new JournalEvent.Released(at, entry, by, why);
            case "REJECTED" -> new JournalEvent.Rejected(at, entry, by, why);
            case "CONFIRMED" -> new JournalEvent.Confirmed(at, entry, by);
            case "ENDED" -> new JournalEvent.Ended(at, by);
            default -> throw new IllegalArgumentException("no event of kind " + row.getString("kind"));
        };
    }

    private static Remark first(List<Remark> remarks, long id) {
        return remarks.stream()
                .findFirst()
                .orElseThrow(() -> new IllegalStateException("event " + id + " has no remark"));
    }

    private static Reading reading(ResultSet row) throws SQLException {
        return new Reading(
                Side.valueOf(row.getString("side")),
                Measure.of(row.getString("site"), Motion.valueOf(row.getString("motion"))),
                Mode.valueOf(row.getString("mode")),
                ValueColumns.read(row).value(),
                Placement.valueOf(row.getString("placement")));
    }

    private static Heard heard(ResultSet row) throws SQLException {
        return new Heard(
                row.getString("words"),
                Heard.Source.valueOf(row.getString("source")),
                row.getDouble("confidence"),
                Duration.ofNanos(row.getLong("start_ns")),
                Duration.ofNanos(row.getLong("end_ns")),
                new Versions(row.getString("grammar"), row.getString("model"), row.getString("rules")));
    }

    private static OptionalInt optional(ResultSet row, String column) throws SQLException {
        int value = row.getInt(column);
        return row.wasNull() ? OptionalInt.empty() : OptionalInt.of(value);
    }
}
