package org.arcsay.store;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.Statement;
import java.time.Clock;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.List;
import org.arcsay.model.JournalEvent;
import org.arcsay.model.Visit;
import org.arcsay.session.JournalException;
import org.arcsay.store.Database.Connector;
import org.arcsay.store.StoreException.Problem;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.sqlite.SQLiteErrorCode;

class FaultTest {
    private static final int EVENTS = 2;

    @TempDir
    private Path folder;

    private Path file;

    @BeforeEach
    void name() {
        file = folder.resolve("arcsay.db");
    }

    /** What was told to the user. */
    private record Told(List<JournalEvent> stored, List<String> refusals) {}

    /** Fails call 1, 2, 3 … of storing a visit until a run passes untouched; a refused event is said again. */
    @Test
    void whatWasToldIsWhatIsStoredWhicheverCallFails() throws Exception {
        FaultyConnector connector = new FaultyConnector(SQLiteErrorCode.SQLITE_IOERR);
        int faults = 0;
        try (VisitStore store = VisitStore.open(file, opening(connector))) {
            boolean untouched = false;
            for (int call = 1; !untouched; call++) {
                connector.failAt(Integer.MAX_VALUE);
                Visit visit = store.begin(Records.PATIENT, Records.START, "");
                connector.failAt(call);
                Told told = tell(store, visit);
                assertEquals(
                        connector.failed() ? 1 : 0,
                        told.refusals().size(),
                        told.refusals().toString());
                untouched = !connector.failed();
                connector.failAt(Integer.MAX_VALUE);
                assertEquals(told.stored(), store.history(visit.id()), "call " + call);
                faults += told.refusals().size();
            }
        }
        assertTrue(faults > 50, "only " + faults + " calls were made to fail");
        try (VisitStore store = VisitStore.open(file)) {
            store.integrityCheck();
            assertEquals(faults + 1, store.visits(Records.PATIENT).size());
            for (Visit visit : store.visits(Records.PATIENT)) {
                assertEquals(
                        Records.expected(visit.id(), 61, EVENTS).written(),
                        store.history(visit.id()),
                        "visit " + visit.id());
            }
        }
        FaultTable.row(
                "call-1-storing",
                "call n of the database fails while storing, n = 1, 2, 3 …",
                faults,
                0,
                "\"… Nothing was stored by this step …\" every time; stored at the second try");
    }

    private static Opening opening(Connector connector) {
        return new Opening(connector, Schema.CURRENT, Clock.systemUTC(), Opening.SMALL);
    }

    private static Told tell(VisitStore store, Visit begun) {
        List<JournalEvent> stored = new ArrayList<>();
        List<String> refusals = new ArrayList<>();
        for (JournalEvent event : Records.expected(begun.id(), 61, EVENTS).written()) {
            boolean done = false;
            while (!done) {
                try {
                    store.journal(begun.id()).append(event);
                    stored.add(event);
                    done = true;
                } catch (JournalException e) {
                    assertForPeople(e.getMessage());
                    refusals.add(e.getMessage());
                }
            }
        }
        return new Told(stored, refusals);
    }

    private static void assertForPeople(String message) {
        assertTrue(message.contains("Nothing was stored"), message);
        assertFalse(message.contains("Exception") || message.contains("SQLITE"), message);
    }

    /** Fails call 1, 2, 3 … of creating a file, of opening one and of reading it. */
    @Test
    void openingFailsWithAMessageAndWorksTheNextTime() throws Exception {
        int faults = 0;
        boolean untouched = false;
        for (int call = 1; !untouched; call++) {
            Path fresh = folder.resolve(call + ".db");
            FaultyConnector connector = new FaultyConnector(SQLiteErrorCode.SQLITE_IOERR);
            connector.failAt(call);
            try (VisitStore store = VisitStore.open(fresh, opening(connector))) {
                store.patients();
                store.recent(5);
            } catch (StoreException e) {
                assertTrue(connector.failed(), e.getMessage());
                assertFalse(String.valueOf(e.getMessage()).contains("Exception"), e.getMessage());
                faults++;
            }
            untouched = !connector.failed();
            VisitStore.open(fresh).close();
        }
        assertTrue(faults > 30, "only " + faults + " calls were made to fail");
        FaultTable.row(
                "call-2-opening",
                "call n of the database fails while creating, opening, reading",
                faults,
                0,
                "the same; works at the next start");
    }

    @Test
    void aFullDiskIsSaidAndTheEntryIsStoredOnceThereIsRoom() throws Exception {
        try (VisitStore store = VisitStore.open(file)) {
            Records records = Records.fill(store, 62, 5);
            limitPages(store, 1);
            int refused = 0;
            for (int i = 0; i < 300 && refused == 0; i++) {
                try {
                    records.append(store, 1);
                } catch (JournalException e) {
                    assertEquals(Problem.DISK_FULL, ((StoreException) e.getCause()).problem());
                    assertForPeople(e.getMessage());
                    refused++;
                }
            }
            assertEquals(1, refused, "the disk never was full");
            assertEquals(records.written(), store.history(records.visit().id()));
            limitPages(store, 1_000_000);
            store.journal(records.visit().id()).append(new JournalEvent.Ended(Records.START, ""));
            assertEquals(
                    records.written().size() + 1,
                    store.history(records.visit().id()).size());
            store.integrityCheck();
        }
    }

    private static void limitPages(VisitStore store, int pages) throws StoreException {
        store.database().direct(connection -> {
            try (Statement statement = connection.createStatement()) {
                return statement.execute("PRAGMA max_page_count = " + pages);
            }
        });
    }

    /** Root may write anywhere, so the file is made read-only for SQLite itself, not by permissions. */
    @Test
    void aReadOnlyFileIsSaid() throws Exception {
        VisitStore.open(file).close();
        Connector readOnly = (config, url) -> {
            Connection connection = Connector.DRIVER.connect(config, url);
            try (Statement statement = connection.createStatement()) {
                statement.execute("PRAGMA query_only = 1");
            }
            return connection;
        };
        try (VisitStore store = VisitStore.open(file, opening(readOnly))) {
            StoreException refused =
                    assertThrows(StoreException.class, () -> store.begin(Records.PATIENT, Records.START, ""));
            assertEquals(Problem.NOT_WRITABLE, refused.problem());
            assertForPeople(refused.getMessage());
        }
    }

    @Test
    void aFolderThatCannotBeMadeIsSaid() throws Exception {
        Path inTheWay = Files.createFile(folder.resolve("file"));
        StoreException refused =
                assertThrows(StoreException.class, () -> VisitStore.open(inTheWay.resolve("arcsay.db")));
        assertFalse(String.valueOf(refused.getMessage()).contains("Exception"), refused.getMessage());
        assertThrows(StoreException.class, () -> new DataFolder(inTheWay, folder, folder).create());
    }

    @Test
    void aClockThatGoesBackChangesNeitherOrderNorContent() throws Exception {
        try (VisitStore store = VisitStore.open(file)) {
            Visit later = store.begin(Records.PATIENT, OffsetDateTime.parse("2026-10-25T02:59:59+02:00"), "");
            Visit earlier = store.begin(Records.PATIENT, OffsetDateTime.parse("2026-10-25T02:00:01+01:00"), "");
            Visit wrong = store.begin(Records.PATIENT, OffsetDateTime.parse("1999-01-01T00:00:00Z"), "");
            assertEquals(List.of(later, earlier, wrong), store.visits(Records.PATIENT));
            JournalEvent second = new JournalEvent.Ended(OffsetDateTime.parse("1970-01-01T00:00:00Z"), "");
            store.journal(later.id()).append(new JournalEvent.Ended(Records.START, ""));
            store.journal(later.id()).append(second);
            assertEquals(second, store.history(later.id()).get(1));
        }
        FaultTable.row(
                "clock",
                "clock set back, by an hour at the end of summer time, by 27 and by 56 years",
                3,
                0,
                "nothing; the order of events is that of storing, the times are as the clock said");
    }

    @Test
    void anInterruptedErasureLeavesThePatientWhole() throws Exception {
        Records records;
        try (VisitStore store = VisitStore.open(file)) {
            records = Records.fill(store, 63, 20);
        }
        int faults = 0;
        for (int call = 1; ; call++) {
            FaultyConnector connector = new FaultyConnector(SQLiteErrorCode.SQLITE_IOERR);
            try (VisitStore store = VisitStore.open(file, opening(connector))) {
                connector.failAt(call);
                String refused = null;
                try {
                    store.erase(Records.PATIENT);
                } catch (StoreException e) {
                    refused = e.getMessage();
                }
                assertEquals(connector.failed(), refused != null);
                connector.failAt(Integer.MAX_VALUE);
                if (!store.knows(Records.PATIENT)) {
                    assertTrue(refused == null || refused.contains("is erased"), String.valueOf(refused));
                    break;
                }
                assertTrue(refused.contains("Nothing was stored"), refused);
                assertEquals(records.written(), store.history(records.visit().id()));
                faults++;
            }
        }
        assertTrue(faults > 10, "only " + faults + " calls were made to fail");
        FaultTable.row(
                "call-3-erasing",
                "call n of the database fails while erasing a patient",
                faults,
                0,
                "\"Nothing was stored\", the patient whole; erased at the second try");
    }
}
