package org.arcsay.store;

import static org.arcsay.store.Records.PATIENT;
import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.RandomAccessFile;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.ResultSet;
import java.sql.Statement;
import java.time.Instant;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.arcsay.model.PatientCode;
import org.arcsay.store.Backup.Purpose;
import org.arcsay.store.StoreException.Problem;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class BackupsTest {
    private static final Instant NOW = Instant.parse("2026-03-02T12:00:00.500Z");

    @TempDir
    private Path folder;

    private Path file;
    private Backups backups;

    @BeforeEach
    void name() {
        file = folder.resolve("arcsay.db");
        backups = Backups.beside(file);
    }

    @Test
    void aBackupHoldsAllAndIsRestoredInPlaceOfADamagedFile() throws Exception {
        Records records;
        Backup backup;
        try (VisitStore store = VisitStore.open(file)) {
            records = Records.fill(store, 11, 80);
            backup = backups.make(store, NOW);
            records.append(store, 5);
        }
        assertEquals(Optional.of(backup), backups.lastGood());
        damage(file);
        byte[] damaged = Files.readAllBytes(file);

        StoreException refused = assertThrows(StoreException.class, () -> VisitStore.open(file));
        assertEquals(Problem.DAMAGED, refused.problem());
        assertTrue(String.valueOf(refused.getMessage()).contains("made " + NOW), refused.getMessage());
        assertArrayEquals(damaged, Files.readAllBytes(file), "a damaged file is never changed");

        Path aside = Backups.restore(backup.file(), file, NOW).orElseThrow();
        assertArrayEquals(damaged, Files.readAllBytes(aside.resolve("arcsay.db")));
        assertEquals(2, Files.readAllBytes(file)[18], "the restored file uses a write-ahead log from the start");
        try (VisitStore store = VisitStore.open(file)) {
            assertEquals(
                    records.written().subList(0, 80),
                    store.history(records.visit().id()));
        }
    }

    @Test
    void aDamagedFileCanStillBeLookedAt() throws Exception {
        try (VisitStore store = VisitStore.open(file)) {
            Records.fill(store, 12, 80);
        }
        damage(file);
        try (VisitStore store = VisitStore.openReadOnly(file)) {
            assertEquals(List.of(PATIENT), store.patients());
            assertThrows(StoreException.class, store::integrityCheck);
        }
    }

    @Test
    void aBackupOfADamagedFileIsRefusedAndOlderOnesStay() throws Exception {
        try (VisitStore store = VisitStore.open(file)) {
            Records.fill(store, 13, 80);
            backups.make(store, NOW);
        }
        damage(file);
        try (VisitStore store = VisitStore.openReadOnly(file)) {
            assertThrows(StoreException.class, () -> backups.make(store, NOW.plusSeconds(1)));
        }
        assertEquals(1, backups.list().size());
        assertEquals(1, Files.list(folder.resolve("backups")).count(), "no unfinished copy stays");
    }

    @Test
    void aDamagedBackupIsPassedOverAndNeverRestored() throws Exception {
        Backup older;
        Backup newer;
        try (VisitStore store = VisitStore.open(file)) {
            Records.fill(store, 14, 80);
            older = backups.make(store, NOW);
            newer = backups.make(store, NOW.plusSeconds(1));
        }
        damage(newer.file());
        byte[] before = Files.readAllBytes(file);
        assertEquals(Optional.of(older), backups.lastGood());
        assertThrows(StoreException.class, () -> Backups.restore(newer.file(), file, NOW));
        assertArrayEquals(before, Files.readAllBytes(file));
    }

    @Test
    void theLogOfTheOldFileDoesNotReachIntoTheRestoredOne() throws Exception {
        Records records;
        Backup backup;
        Path log = DurableFiles.log(file);
        Path savedLog = folder.resolve("saved-log");
        Path savedFile = folder.resolve("saved-file");
        try (VisitStore store = VisitStore.open(file)) {
            records = Records.fill(store, 15, 10);
            backup = backups.make(store, NOW);
            records.append(store, 10);
            Files.copy(log, savedLog);
            Files.copy(file, savedFile);
        }
        Files.move(savedLog, log);
        Files.move(savedFile, file, java.nio.file.StandardCopyOption.REPLACE_EXISTING);
        Path aside = Backups.restore(backup.file(), file, NOW).orElseThrow();
        try (VisitStore store = VisitStore.open(file)) {
            assertEquals(
                    records.written().subList(0, 10),
                    store.history(records.visit().id()));
        }
        try (VisitStore store = VisitStore.open(aside.resolve("arcsay.db"))) {
            assertEquals(records.written(), store.history(records.visit().id()));
        }
    }

    @Test
    void aLogWithoutItsFileIsDamageAndNoReasonToStartAfresh() throws Exception {
        Files.writeString(DurableFiles.log(file), "x");
        assertEquals(
                Problem.DAMAGED,
                assertThrows(StoreException.class, () -> VisitStore.open(file)).problem());
        assertFalse(Files.exists(file));
    }

    @Test
    void anOpenDatabaseIsNotReplaced() throws Exception {
        try (VisitStore store = VisitStore.open(file)) {
            Backup backup = backups.make(store, NOW);
            StoreException refused =
                    assertThrows(StoreException.class, () -> Backups.restore(backup.file(), file, NOW));
            assertEquals(Problem.IN_USE, refused.problem());
        }
    }

    @Test
    void aBackupFollowsEverySessionThatStoredSomethingAndOneADayStays() throws Exception {
        try (VisitStore store = VisitStore.open(file)) {
            Records records = Records.fill(store, 16, 5);
            Backup first = backups.keepUp(store, NOW).orElseThrow();
            assertEquals(Optional.empty(), backups.keepUp(store, NOW.plusSeconds(60)), "nothing new");
            records.append(store, 1);
            Backup second = backups.keepUp(store, NOW.plusSeconds(120)).orElseThrow();
            assertEquals(List.of(second), backups.list());
            store.begin(new PatientCode("OTHER-1"), Records.START, "");
            Backup nextDay = backups.keepUp(store, NOW.plusSeconds(86_400)).orElseThrow();
            assertEquals(List.of(nextDay, second), backups.list());
            assertFalse(Files.exists(first.file()));
        }
    }

    @Test
    void aDamagedNewestBackupIsMadeAnewThoughNothingChanged() throws Exception {
        try (VisitStore store = VisitStore.open(file)) {
            Records.fill(store, 18, 40);
            damage(backups.keepUp(store, NOW).orElseThrow().file());
            assertTrue(backups.keepUp(store, NOW.plusSeconds(60)).isPresent());
        }
    }

    /** SQLite finds nothing wrong with a digit that the disk changed; the full check does. */
    @Test
    void aChangedDigitInABackupKeepsItFromBeingRestored() throws Exception {
        Backup backup;
        try (VisitStore store = VisitStore.open(file)) {
            Records.fill(store, 19, 60);
            backup = backups.make(store, NOW);
        }
        changeADigit(backup.file());
        assertEquals(Optional.empty(), backups.lastGood());
        StoreException refused = assertThrows(StoreException.class, () -> Backups.restore(backup.file(), file, NOW));
        assertEquals(Problem.DAMAGED, refused.problem());
    }

    @Test
    void aChangedDigitInTheRecordsIsFoundBeforeABackup() throws Exception {
        try (VisitStore store = VisitStore.open(file)) {
            Records.fill(store, 20, 60);
        }
        changeADigit(file);
        try (VisitStore store = VisitStore.open(file)) {
            StoreException refused = assertThrows(StoreException.class, () -> backups.make(store, NOW));
            assertTrue(String.valueOf(refused.getMessage()).contains("visit 1: event "), refused.getMessage());
            assertThrows(StoreException.class, store::integrityCheck);
        }
        assertEquals(List.of(), backups.list());
    }

    private static void changeADigit(Path path) throws Exception {
        byte[] bytes = Files.readAllBytes(path);
        String text = new String(bytes, java.nio.charset.StandardCharsets.ISO_8859_1);
        int at = text.indexOf("degrees") - 1;
        bytes[at] = (byte) (bytes[at] == '7' ? '1' : '7');
        Files.write(path, bytes);
    }

    @Test
    void oldDailyBackupsMakeRoomAndOthersStay() throws Exception {
        Path kept = folder.resolve("backups");
        Files.createDirectory(kept);
        for (int day = 1; day <= 400; day++) {
            Files.createFile(Backup.in(kept, NOW.minusSeconds(day * 86_400L), Purpose.DAILY)
                    .file());
        }
        Path asked = Files.createFile(
                Backup.in(kept, NOW.minusSeconds(401 * 86_400L), Purpose.ASKED).file());
        Path schema = Files.createFile(
                Backup.in(kept, NOW.minusSeconds(402 * 86_400L), Purpose.SCHEMA).file());
        try (VisitStore store = VisitStore.open(file)) {
            backups.keepUp(store, NOW);
        }
        List<Instant> left = backups.list().stream().map(Backup::made).toList();
        assertTrue(Files.exists(asked) && Files.exists(schema));
        List<String> days =
                left.stream().map(made -> made.toString().substring(0, 10)).toList();
        assertEquals(
                List.of(
                        "2026-03-02",
                        "2026-03-01",
                        "2026-02-28",
                        "2026-02-27",
                        "2026-02-26",
                        "2026-02-25",
                        "2026-02-24",
                        "2026-02-22",
                        "2026-02-15",
                        "2026-02-08",
                        "2026-01-31",
                        "2025-12-31",
                        "2025-11-30",
                        "2025-10-31",
                        "2025-09-30",
                        "2025-08-31",
                        "2025-07-31",
                        "2025-06-30",
                        "2025-05-31",
                        "2025-04-30",
                        "2025-01-25",
                        "2025-01-24"),
                days);
    }

    @Test
    void aClockThatGoesBackNeitherOverwritesNorRemovesTheNewBackup() throws Exception {
        try (VisitStore store = VisitStore.open(file)) {
            Backup first = backups.make(store, NOW);
            Backup second = backups.make(store, NOW);
            assertEquals(NOW.plusMillis(1), second.made());
            for (int day = 0; day < 30; day++) {
                Files.copy(
                        first.file(),
                        Backup.in(folder.resolve("backups"), NOW.plusSeconds(day * 86_400L), Purpose.DAILY)
                                .file());
            }
            store.begin(PATIENT, Records.START, "");
            Backup back =
                    backups.keepUp(store, NOW.minusSeconds(1000 * 86_400L)).orElseThrow();
            assertTrue(backups.list().containsAll(List.of(first, second, back)));
        }
    }

    @Test
    void namesAreReadBackAndOthersAreNotTakenForBackups() {
        Backup backup = Backup.in(folder, NOW, Purpose.DAILY);
        assertEquals(
                "arcsay-20260302T120000500Z-daily.db",
                backup.file().getFileName().toString());
        assertEquals(Optional.of(backup), Backup.at(backup.file()));
        for (String name : List.of(
                "notes.txt", "arcsay-20261399T120000500Z-daily.db", "arcsay-20260302T120000500Z-daily.db-wal")) {
            assertEquals(Optional.empty(), Backup.at(folder.resolve(name)), name);
        }
    }

    @Test
    void anErasedPatientIsGoneFromTheFileAndNamedInBackups() throws Exception {
        PatientCode other = new PatientCode("OTHER-1");
        try (VisitStore store = VisitStore.open(file)) {
            Records records = Records.fill(store, 17, 60);
            store.begin(other, Records.START, "");
            Backup before = backups.make(store, NOW);
            Erasure erasure = store.erase(PATIENT);
            assertEquals(new Erasure(1, 60), erasure);
            assertFalse(store.knows(PATIENT));
            assertEquals(Optional.empty(), store.visit(records.visit().id()));
            assertEquals(1, store.visits(other).size());
            store.integrityCheck();
            for (Path part : DurableFiles.parts(file)) {
                assertFalse(contains(part, PATIENT.text()), part.toString());
                assertFalse(contains(part, "patient moved"), part.toString());
            }
            Backup after = backups.make(store, NOW.plusSeconds(1));
            assertEquals(List.of(before), backups.holding(PATIENT));
            assertEquals(List.of(after, before), backups.holding(other));
            assertEquals(
                    Problem.REFUSED,
                    assertThrows(StoreException.class, () -> store.erase(PATIENT))
                            .problem());
        }
    }

    private static boolean contains(Path path, String text) throws Exception {
        return Files.exists(path)
                && new String(Files.readAllBytes(path), java.nio.charset.StandardCharsets.ISO_8859_1).contains(text);
    }

    /** Writes rubbish over the first page of the readings. */
    private static void damage(Path path) throws Exception {
        int page;
        try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + path);
                Statement sql = connection.createStatement();
                ResultSet row = sql.executeQuery("SELECT rootpage FROM sqlite_schema WHERE name = 'reading'")) {
            page = row.getInt(1);
        }
        try (RandomAccessFile raw = new RandomAccessFile(path.toFile(), "rw")) {
            byte[] rubbish = new byte[4096];
            Arrays.fill(rubbish, (byte) 0xA5);
            raw.seek((page - 1) * 4096L);
            raw.write(rubbish);
        }
    }
}
