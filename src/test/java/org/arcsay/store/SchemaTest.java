package org.arcsay.store;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Objects;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.arcsay.store.Backup.Purpose;
import org.arcsay.store.StoreException.Problem;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

/** A stored sample of every schema version, each with what is in it as JSON, is brought to the newest and compared. */
class SchemaTest {
    private static final int NEWEST = Schema.CURRENT.newest();

    @TempDir
    private Path folder;

    private Path file;

    @BeforeEach
    void name() {
        file = folder.resolve("arcsay.db");
    }

    static Stream<Integer> versions() {
        return IntStream.rangeClosed(1, Schema.CURRENT.newest()).boxed();
    }

    static void copySample(int version, Path target) throws Exception {
        try (InputStream in = resource("schema-" + version + ".db")) {
            Files.copy(in, target);
        }
    }

    private static InputStream resource(String name) {
        return Objects.requireNonNull(SchemaTest.class.getResourceAsStream(name), name);
    }

    static void assertHoldsSample(VisitStore store, int version) throws Exception {
        try (InputStream in = resource("schema-" + version + ".json")) {
            PatientExport expected = PatientExport.mapper().readValue(in, PatientExport.class);
            for (PatientExport.VisitExport visit : expected.visits()) {
                assertEquals(visit.events(), store.history(visit.id()));
            }
            assertEquals(1, expected.visits().size());
            assertEquals(
                    expected.protocols().stream()
                            .map(PatientExport.ProtocolExport::version)
                            .toList(),
                    store.protocols(Records.PATIENT));
            assertEquals(version >= 2 ? 1 : 0, expected.protocols().size());
        }
        store.integrityCheck();
    }

    @ParameterizedTest
    @MethodSource("versions")
    void everyOlderFileIsBroughtToTheNewestSchema(int version) throws Exception {
        copySample(version, file);
        try (VisitStore store = VisitStore.open(file)) {
            assertHoldsSample(store, version);
        }
        assertEquals(Schema.CURRENT.newest(), Header.read(file).userVersion());
    }

    @ParameterizedTest
    @MethodSource("versions")
    void everyOlderBackupCanBeRestored(int version) throws Exception {
        Path backup = folder.resolve("old.db");
        copySample(version, backup);
        Backups.restore(backup, file, java.time.Instant.EPOCH);
        try (VisitStore store = VisitStore.open(file)) {
            assertHoldsSample(store, version);
        }
    }

    @Test
    void aBackupIsMadeBeforeAChangeOfTheSchema() throws Exception {
        copySample(NEWEST, file);
        try (VisitStore store = VisitStore.open(file, Schemas.next())) {
            assertHoldsSample(store, NEWEST);
        }
        assertEquals(NEWEST + 1, Header.read(file).userVersion());
        List<Backup> backups = Backups.beside(file).list();
        assertEquals(
                List.of(Purpose.SCHEMA), backups.stream().map(Backup::purpose).toList());
        assertEquals(NEWEST, Header.read(backups.get(0).file()).userVersion());
        assertEquals(
                Problem.NEWER,
                assertThrows(StoreException.class, () -> VisitStore.open(file)).problem());
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "CREATE TABLE a (b) STRICT; SELECT",
                "CREATE TABLE a (b INTEGER REFERENCES event) STRICT; PRAGMA defer_foreign_keys = 1; INSERT INTO a VALUES (999999)",
                "CREATE TABLE a (b INTEGER) STRICT; INSERT INTO nowhere VALUES (1)"
            })
    void aStepThatFailsIsUndoneAndTheFileStaysUsable(String step) throws Exception {
        copySample(NEWEST, file);
        assertThrows(StoreException.class, () -> VisitStore.open(file, Schemas.withStep(step)));
        assertEquals(NEWEST, Header.read(file).userVersion());
        try (VisitStore store = VisitStore.open(file)) {
            assertHoldsSample(store, NEWEST);
        }
    }

    @Test
    void anOlderFileThatIsOnlyLookedAtHasNoProtocolsAndStaysAsItIs() throws Exception {
        copySample(1, file);
        byte[] before = Files.readAllBytes(file);
        try (VisitStore store = VisitStore.openReadOnly(file)) {
            assertEquals(List.of(), store.protocols(Records.PATIENT));
            assertEquals(1, store.visits(Records.PATIENT).size());
        }
        assertArrayEquals(before, Files.readAllBytes(file));
    }

    @Test
    void aFileOfANewerSchemaIsNotTouched() throws Exception {
        copySample(NEWEST, file);
        VisitStore.open(file, Schemas.next()).close();
        byte[] before = Files.readAllBytes(file);
        assertThrows(StoreException.class, () -> VisitStore.open(file));
        assertThrows(StoreException.class, () -> VisitStore.openReadOnly(file));
        assertArrayEquals(before, Files.readAllBytes(file));
    }
}
