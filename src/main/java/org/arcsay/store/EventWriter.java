package org.arcsay.store;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Types;
import java.time.OffsetDateTime;
import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.OptionalInt;
import org.arcsay.model.Finding;
import org.arcsay.model.Finding.LabelledNumber;
import org.arcsay.model.Heard;
import org.arcsay.model.JournalEvent;
import org.arcsay.model.Reading;
import org.arcsay.model.Remark;

/** For one thread, inside one transaction. Adds the rows of one event. */
final class EventWriter {
    private final Connection connection;

    EventWriter(Connection connection) {
        this.connection = connection;
    }

    static String timestamp(OffsetDateTime time) {
        return time.format(DateTimeFormatter.ISO_OFFSET_DATE_TIME);
    }

    void append(long visit, JournalEvent event) throws SQLException {
        if (event instanceof JournalEvent.Taken taken) {
            long row = event(visit, "TAKEN", event, OptionalInt.of(taken.entry()), taken.by(), taken.why());
            reading(row, taken);
            remarks(row, taken.remarks());
            findings(row, taken.findings());
        } else if (event instanceof JournalEvent.Remarked remarked) {
            long row = event(visit, "REMARKED", event, OptionalInt.of(remarked.entry()), remarked.by(), "");
            remarks(row, List.of(remarked.remark()));
        } else if (event instanceof JournalEvent.Released released) {
            event(visit, "RELEASED", event, OptionalInt.of(released.entry()), released.by(), released.why());
        } else if (event instanceof JournalEvent.Rejected rejected) {
            event(visit, "REJECTED", event, OptionalInt.of(rejected.entry()), rejected.by(), rejected.why());
        } else if (event instanceof JournalEvent.Confirmed confirmed) {
            event(visit, "CONFIRMED", event, OptionalInt.of(confirmed.entry()), confirmed.by(), "");
        } else if (event instanceof JournalEvent.Ended ended) {
            event(visit, "ENDED", event, OptionalInt.empty(), ended.by(), "");
        } else {
            throw new IllegalArgumentException("no row for " + event.getClass());
        }
        try (Seals seals = new Seals(connection, visit)) {
            seals.add();
        }
    }

    private long event(long visit, String kind, JournalEvent event, OptionalInt entry, String by, String why)
            throws SQLException {
        try (PreparedStatement insert = connection.prepareStatement("""
                INSERT INTO event (visit, number, kind, at, entry, by_whom, why)
                VALUES (?1, (SELECT coalesce(max(number), 0) + 1 FROM event WHERE visit = ?1), ?2, ?3, ?4, ?5, ?6)
                RETURNING id""")) {
            insert.setLong(1, visit);
            insert.setString(2, kind);
            insert.setString(3, timestamp(event.at()));
            setOptional(insert, 4, entry);
            insert.setString(5, by);
            insert.setString(6, why);
            try (ResultSet row = insert.executeQuery()) {
                row.next();
                return row.getLong(1);
            }
        }
    }

    private void reading(long row, JournalEvent.Taken taken) throws SQLException {
        try (PreparedStatement insert = connection.prepareStatement("""
                INSERT INTO reading (event, held, replaces, side, site, motion, mode, placement,
                    value_kind, amount, unit, word,
                    words, source, confidence, start_ns, end_ns, grammar, model, rules)
                VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?)""")) {
            Reading reading = taken.reading();
            insert.setLong(1, row);
            insert.setInt(2, taken.held() ? 1 : 0);
            setOptional(insert, 3, taken.replaces());
            insert.setString(4, reading.side().name());
            insert.setString(5, reading.measure().site().code());
            insert.setString(6, reading.measure().motion().name());
            insert.setString(7, reading.mode().name());
            insert.setString(8, reading.placement().name());
            ValueColumns.of(reading.value()).write(insert, 9);
            heard(insert, 13, taken.heard());
            insert.executeUpdate();
        }
    }

    private static void heard(PreparedStatement insert, int index, Heard heard) throws SQLException {
        insert.setString(index, heard.words());
        insert.setString(index + 1, heard.source().name());
        insert.setDouble(index + 2, heard.confidence());
        insert.setLong(index + 3, heard.start().toNanos());
        insert.setLong(index + 4, heard.end().toNanos());
        insert.setString(index + 5, heard.versions().grammar());
        insert.setString(index + 6, heard.versions().model());
        insert.setString(index + 7, heard.versions().rules());
    }

    private void remarks(long row, List<Remark> remarks) throws SQLException {
        try (PreparedStatement insert = connection.prepareStatement(
                "INSERT INTO remark (event, position, kind, text, score) VALUES (?, ?, ?, ?, ?)")) {
            for (int i = 0; i < remarks.size(); i++) {
                RemarkColumns columns = RemarkColumns.of(remarks.get(i));
                insert.setLong(1, row);
                insert.setInt(2, i + 1);
                insert.setString(3, columns.kind());
                insert.setString(4, columns.text());
                setOptional(insert, 5, columns.score());
                insert.executeUpdate();
            }
        }
    }

    private void findings(long row, List<Finding> findings) throws SQLException {
        try (PreparedStatement insert = connection.prepareStatement("""
                INSERT INTO finding (event, position, rule, severity, sentence, value_kind, amount, unit, word)
                VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?)""")) {
            for (int i = 0; i < findings.size(); i++) {
                Finding finding = findings.get(i);
                insert.setLong(1, row);
                insert.setInt(2, i + 1);
                insert.setString(3, finding.rule());
                insert.setString(4, finding.severity().name());
                insert.setString(5, finding.sentence());
                ValueColumns.of(finding.alternative()).write(insert, 6);
                insert.executeUpdate();
                numbers(row, i + 1, finding.numbers());
            }
        }
    }

    private void numbers(long row, int finding, List<LabelledNumber> numbers) throws SQLException {
        try (PreparedStatement insert = connection.prepareStatement(
                "INSERT INTO finding_number (event, finding, position, label, number, unit) VALUES (?, ?, ?, ?, ?, ?)")) {
            for (int i = 0; i < numbers.size(); i++) {
                LabelledNumber number = numbers.get(i);
                insert.setLong(1, row);
                insert.setInt(2, finding);
                insert.setInt(3, i + 1);
                insert.setString(4, number.label());
                insert.setString(5, number.number());
                insert.setString(6, number.unit());
                insert.executeUpdate();
            }
        }
    }

    private static void setOptional(PreparedStatement statement, int index, OptionalInt value) throws SQLException {
        if (value.isPresent()) {
            statement.setInt(index, value.getAsInt());
        } else {
            statement.setNull(index, Types.INTEGER);
        }
    }
}
