package org.arcsay.store;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.OffsetDateTime;
import org.arcsay.model.PatientProtocol;
import org.arcsay.model.ProtocolVersion;

/** Run by hand once for each new schema: writes the sample file of the newest version and what is in it into a folder. */
final class SampleFile {
    private static final long SEED = 41;
    private static final int EVENTS = 120;

    private SampleFile() {}

    public static void main(String[] arguments) throws Exception {
        Path folder = Path.of(arguments[0]);
        Path work = Files.createTempDirectory("sample");
        String name = "schema-" + Schema.CURRENT.newest();
        try (VisitStore store = VisitStore.open(work.resolve("arcsay.db"))) {
            Records.fill(store, SEED, EVENTS);
            store.setProtocol(
                    Records.PATIENT,
                    new ProtocolVersion(
                            OffsetDateTime.parse("2026-01-05T09:00:00+01:00"),
                            "AK",
                            PatientProtocol.parse("involved right; no passive; IP flexion at most 40")));
            Backup backup = Backups.beside(store.file()).make(store, Instant.EPOCH);
            Files.copy(backup.file(), folder.resolve(name + ".db"));
            Files.write(folder.resolve(name + ".json"), PatientExport.json(store, Records.PATIENT));
        }
    }
}
