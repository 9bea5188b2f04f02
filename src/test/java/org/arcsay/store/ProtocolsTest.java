package org.arcsay.store;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.Statement;
import java.time.OffsetDateTime;
import org.arcsay.model.PatientCode;
import org.arcsay.model.PatientProtocol;
import org.arcsay.model.ProtocolVersion;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The treatment protocols of patients in a real records file. */
class ProtocolsTest {
    private static final PatientCode PATIENT = new PatientCode("T-7");
    private static final OffsetDateTime MONDAY = OffsetDateTime.parse("2026-03-02T10:00:00+01:00");
    private static final PatientProtocol STRICT =
            PatientProtocol.parse("involved left; no passive; IP extension lacks at least 20");
    private static final PatientProtocol LOOSER = PatientProtocol.parse("involved left; no resisted");

    @TempDir
    private Path folder;

    private Path file;

    @BeforeEach
    void name() {
        file = folder.resolve("arcsay.db");
    }

    private static ProtocolVersion set(OffsetDateTime at, PatientProtocol protocol) {
        return new ProtocolVersion(at, "AK", protocol);
    }

    @Test
    void theOneThatWasSetLastBeforeAMomentHoldsAtIt() throws Exception {
        try (VisitStore store = VisitStore.open(file)) {
            store.setProtocol(PATIENT, set(MONDAY, STRICT));
            store.setProtocol(PATIENT, set(MONDAY.plusDays(14), LOOSER));
        }
        try (VisitStore store = VisitStore.openReadOnly(file)) {
            assertThat(store.protocol(PATIENT, MONDAY.minusSeconds(1)).isNone()).isTrue();
            assertThat(store.protocol(PATIENT, MONDAY)).isEqualTo(STRICT);
            assertThat(store.protocol(PATIENT, MONDAY.plusDays(13))).isEqualTo(STRICT);
            assertThat(store.protocol(PATIENT, MONDAY.plusDays(15))).isEqualTo(LOOSER);
            assertThat(store.protocols(PATIENT)).containsExactly(set(MONDAY, STRICT), set(MONDAY.plusDays(14), LOOSER));
            assertThat(store.protocol(new PatientCode("T-8"), MONDAY).isNone()).isTrue();
        }
    }

    @Test
    void isNeitherChangedNorDeletedExceptWithThePatient() throws Exception {
        try (VisitStore store = VisitStore.open(file)) {
            store.setProtocol(PATIENT, set(MONDAY, STRICT));
        }
        assertRefused("UPDATE protocol SET text = ''");
        assertRefused("DELETE FROM protocol");
        try (VisitStore store = VisitStore.open(file)) {
            store.erase(PATIENT);
            assertThat(store.protocols(PATIENT)).isEmpty();
            assertThat(store.knows(PATIENT)).isFalse();
        }
    }

    private void assertRefused(String sql) throws Exception {
        try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + file);
                Statement statement = connection.createStatement()) {
            assertThatThrownBy(() -> statement.executeUpdate(sql)).hasMessageContaining("append-only");
        }
    }

    @Test
    void aChangedLetterIsFound() throws Exception {
        try (VisitStore store = VisitStore.open(file)) {
            store.setProtocol(PATIENT, set(MONDAY, STRICT));
        }
        try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + file);
                Statement statement = connection.createStatement()) {
            statement.executeUpdate("DROP TRIGGER protocol_fixed");
            statement.executeUpdate("UPDATE protocol SET text = replace(text, '20', '30')");
        }
        try (VisitStore store = VisitStore.openReadOnly(file)) {
            assertThatThrownBy(() -> store.protocol(PATIENT, MONDAY)).isInstanceOf(StoreException.class);
            assertThatThrownBy(store::integrityCheck).isInstanceOf(StoreException.class);
        }
    }

    @Test
    void goesWithThePatientIntoAnExportAndBack() throws Exception {
        byte[] export;
        try (VisitStore store = VisitStore.open(file)) {
            store.begin(PATIENT, MONDAY, "");
            store.setProtocol(PATIENT, set(MONDAY, STRICT));
            store.setProtocol(PATIENT, set(MONDAY.plusDays(1), PatientProtocol.none()));
            export = PatientExport.json(store, PATIENT);
        }
        Path other = folder.resolve("other.db");
        try (VisitStore store = VisitStore.open(other)) {
            store.add(other, PatientExport.parse(other, new String(export, java.nio.charset.StandardCharsets.UTF_8)));
            assertThat(store.protocols(PATIENT))
                    .containsExactly(set(MONDAY, STRICT), set(MONDAY.plusDays(1), PatientProtocol.none()));
        }
    }

    @Test
    void aChangeOfTheProtocolAloneMakesABackupDue() throws Exception {
        try (VisitStore store = VisitStore.open(file)) {
            store.begin(PATIENT, MONDAY, "");
            Extent before = Extent.of(store.database());
            store.setProtocol(PATIENT, set(MONDAY, STRICT));
            assertThat(Extent.of(store.database())).isNotEqualTo(before);
        }
    }
}
