package org.arcsay.store;

import static org.arcsay.store.Records.PATIENT;
import static org.arcsay.store.Records.START;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.List;
import java.util.Optional;
import org.arcsay.model.JournalEvent;
import org.arcsay.model.PatientCode;
import org.arcsay.model.Visit;
import org.arcsay.session.JournalException;
import org.arcsay.store.StoreException.Problem;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class VisitStoreTest {
    @TempDir
    private Path folder;

    private Path file;

    @BeforeEach
    void name() {
        file = folder.resolve("arcsay.db");
    }

    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3})
    void everyKindOfEventComesBackAsItWentIn(long seed) throws Exception {
        Records records;
        try (VisitStore store = VisitStore.open(file)) {
            records = Records.fill(store, seed, 150);
        }
        List<JournalEvent> written = records.written();
        Visit state = records.visit();
        for (Class<?> type : JournalEvent.class.getPermittedSubclasses()) {
            assertTrue(written.stream().anyMatch(type::isInstance), "the generator made no " + type);
        }
        try (VisitStore store = VisitStore.open(file)) {
            assertEquals(written, store.history(state.id()));
            assertEquals(Optional.of(state), store.visit(state.id()));
            assertEquals(Optional.of("thumb"), store.plan(state.id()));
            store.integrityCheck();
        }
    }

    @Test
    void visitsAreListedByPatientAndByAge() throws Exception {
        try (VisitStore store = VisitStore.open(file)) {
            assertFalse(store.knows(PATIENT));
            assertEquals(List.of(), store.visits(PATIENT));
            Visit first = store.begin(PATIENT, START, "");
            Visit other = store.begin(new PatientCode("A2"), START.minusDays(1), "");
            Visit second = store.begin(PATIENT, START.minusDays(2), "");
            assertTrue(store.knows(PATIENT));
            assertEquals(List.of(first, second), store.visits(PATIENT));
            assertEquals(List.of(second, other), store.recent(2));
            assertEquals(List.of(new PatientCode("A2"), PATIENT), store.patients());
            assertEquals(Optional.empty(), store.plan(first.id()));
            assertEquals(Optional.empty(), store.visit(99));
        }
    }

    @Test
    void anEventThatDoesNotFitIsRefusedAndNothingOfItIsKept() throws Exception {
        try (VisitStore store = VisitStore.open(file)) {
            Records records = Records.fill(store, 4, 10);
            Visit state = records.visit();
            JournalEvent wrong = new JournalEvent.Confirmed(START, 999, "");
            JournalException refused = assertThrows(
                    JournalException.class, () -> store.journal(state.id()).append(wrong));
            assertTrue(String.valueOf(refused.getMessage()).contains("Nothing was stored"), refused.getMessage());
            assertThrows(JournalException.class, () -> store.journal(77).append(wrong));
            assertEquals(records.written(), store.history(state.id()));
        }
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "UPDATE reading SET amount = '1'",
                "UPDATE event SET at = '2020-01-01T00:00:00Z'",
                "UPDATE remark SET text = 'STIFF'",
                "UPDATE finding SET sentence = ''",
                "UPDATE finding_number SET number = '1'",
                "UPDATE visit SET plan = 'x'",
                "UPDATE patient SET code = 'x'",
                "UPDATE seal SET digest = zeroblob(32)",
                "DELETE FROM seal",
                "DELETE FROM finding_number",
                "DELETE FROM finding",
                "DELETE FROM remark",
                "DELETE FROM reading",
                "DELETE FROM event",
                "DELETE FROM visit",
                "DELETE FROM patient",
                "INSERT OR REPLACE INTO patient (id, code) VALUES (1, 'x')"
            })
    void theJournalCannotBeChangedEvenBySql(String statement) throws Exception {
        try (VisitStore store = VisitStore.open(file)) {
            Records.fill(store, 5, 60);
        }
        try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + file + "?recursive_triggers=true");
                Statement sql = connection.createStatement()) {
            SQLException refused = assertThrows(SQLException.class, () -> sql.executeUpdate(statement));
            assertTrue(refused.getMessage().contains("append-only"), refused.getMessage());
        }
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "'ANGLE', '181', 'degrees', NULL",
                "'ANGLE', '-5', 'degrees', NULL",
                "'ANGLE', 'seventy', 'degrees', NULL",
                "'ANGLE', '5', 'mm', NULL",
                "'NEUTRAL', '5', 'degrees', NULL",
                "'DEFICIT', '0', 'degrees', NULL",
                "'SCORE', '11', 'points', NULL",
                "'SCORE', '5.5', 'points', NULL",
                "'GAP', '1000', 'mm', NULL",
                "'GAP', '10', NULL, NULL",
                "'NOT_TESTED', NULL, NULL, NULL",
                "'NOT_TESTED', '5', 'degrees', NULL",
                "'GUESS', '5', 'degrees', NULL"
            })
    void theTablesThemselvesRefuseValuesThatCannotBe(String columns) throws Exception {
        try (VisitStore store = VisitStore.open(file)) {
            store.begin(PATIENT, START, "");
        }
        try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + file);
                Statement sql = connection.createStatement()) {
            sql.executeUpdate("INSERT INTO event (visit, number, kind, at, entry, by_whom, why)"
                    + " VALUES (1, 1, 'TAKEN', '2026-03-02T09:00:00+01:00', 1, '', '')");
            String insert = "INSERT INTO reading (event, held, side, site, motion, mode, placement, words, source,"
                    + " confidence, start_ns, end_ns, grammar, model, rules, value_kind, amount, unit, word) VALUES"
                    + " (1, 0, 'LEFT', 'IP', 'FLEXION', 'ACTIVE', 'UNSTATED', '', 'VOICE', 1, 0, 0, '', '', '', ";
            SQLException refused = assertThrows(SQLException.class, () -> sql.executeUpdate(insert + columns + ")"));
            assertTrue(refused.getMessage().contains("CHECK"), refused.getMessage());
            assertEquals(1, sql.executeUpdate(insert + "'ANGLE', '180', 'degrees', NULL)"));
        }
    }

    @Test
    void aNewerFileIsRefusedAndLeftUntouched() throws Exception {
        VisitStore.open(file).close();
        sql("PRAGMA user_version = 99");
        byte[] before = Files.readAllBytes(file);
        assertProblem(Problem.NEWER, "Install the newer version");
        assertEquals(-1, java.util.Arrays.mismatch(before, Files.readAllBytes(file)));
    }

    @Test
    void aNewerFileWhoseVersionIsOnlyInTheLogIsRefusedToo() throws Exception {
        VisitStore.open(file).close();
        try (Connection open = DriverManager.getConnection("jdbc:sqlite:" + file);
                Statement sql = open.createStatement()) {
            sql.execute("PRAGMA user_version = 99");
            assertEquals(Schema.CURRENT.scripts().size(), Header.read(file).userVersion());
            assertProblem(Problem.NEWER, "Install the newer version");
        }
    }

    @Test
    void filesThatAreNotOursAreLeftAlone() throws Exception {
        Files.writeString(file, "side;joint;value\n".repeat(50));
        assertProblem(Problem.NOT_OURS, "left untouched");
        Files.delete(file);
        sql("CREATE TABLE t (a)");
        assertProblem(Problem.NOT_OURS, "left untouched");
        Files.delete(file);
        Files.createDirectory(file);
        assertProblem(Problem.NOT_OURS, "folder");
    }

    @Test
    void anEmptyFileIsDamageAndNoReasonToStartAfresh() throws Exception {
        Files.createFile(file);
        assertProblem(Problem.DAMAGED, "empty");
        assertEquals(0, Files.size(file));
    }

    @Test
    void aMissingFileCannotBeLookedAt() {
        assertEquals(
                Problem.MISSING,
                assertThrows(StoreException.class, () -> VisitStore.openReadOnly(file))
                        .problem());
    }

    @Test
    void aFileLockedByAnotherProgramIsNamed() throws Exception {
        try (VisitStore store = VisitStore.open(file)) {
            Visit visit = store.begin(PATIENT, START, "");
            try (Connection other = DriverManager.getConnection("jdbc:sqlite:" + file);
                    Statement sql = other.createStatement()) {
                sql.execute("BEGIN IMMEDIATE");
                JournalException locked = assertThrows(JournalException.class, () -> store.journal(visit.id())
                        .append(new JournalEvent.Ended(START, "")));
                assertEquals(Problem.LOCKED, ((StoreException) locked.getCause()).problem());
                sql.execute("ROLLBACK");
            }
            store.journal(visit.id()).append(new JournalEvent.Ended(START, ""));
            assertEquals(1, store.history(visit.id()).size());
        }
    }

    @Test
    void readersLookWhileAWriterWritesAndCannotWriteThemselves() throws Exception {
        try (VisitStore store = VisitStore.open(file)) {
            Visit visit = Records.fill(store, 6, 20).visit();
            try (VisitStore reader = VisitStore.openReadOnly(file)) {
                assertEquals(Optional.of(visit), reader.visit(visit.id()));
                StoreException refused = assertThrows(StoreException.class, () -> reader.begin(PATIENT, START, ""));
                assertEquals(Problem.NOT_WRITABLE, refused.problem());
            }
        }
    }

    @Test
    void theSameFileCannotBeOpenedTwiceEvenThroughALink() throws Exception {
        try (VisitStore store = VisitStore.open(file)) {
            store.patients();
            assertProblem(Problem.IN_USE, "process " + ProcessHandle.current().pid() + ", since 20");
            Path link = Files.createSymbolicLink(folder.resolve("link.db"), file);
            StoreException refused = assertThrows(StoreException.class, () -> VisitStore.open(link));
            assertEquals(Problem.IN_USE, refused.problem());
        }
        VisitStore.open(file).close();
    }

    private void sql(String statement) throws SQLException {
        try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + file);
                Statement sql = connection.createStatement()) {
            sql.execute(statement);
        }
    }

    private void assertProblem(Problem problem, String words) {
        StoreException refused = assertThrows(StoreException.class, () -> VisitStore.open(file));
        assertEquals(problem, refused.problem());
        assertTrue(String.valueOf(refused.getMessage()).contains(words), refused.getMessage());
    }
}
