package org.arcsay.store;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.arcsay.session.JournalException;
import org.arcsay.store.StoreException.Problem;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A file system of its own that really is full or read-only. Only where the tests may mount one; else skipped. */
class RealDiskTest {
    private static final int ROUNDS = 20;

    @TempDir
    private Path disk;

    private Path file;

    @BeforeEach
    void mountASmallDisk() throws Exception {
        assumeTrue(mount("-t", "tmpfs", "-o", "size=6m,mode=700", "tmpfs"), "needs the right to mount a file system");
        file = disk.resolve("arcsay.db");
    }

    @AfterEach
    void unmount() throws Exception {
        new ProcessBuilder("umount", disk.toString()).start().waitFor();
    }

    private boolean mount(String... options) {
        List<String> command = new ArrayList<>(List.of("mount"));
        command.addAll(List.of(options));
        command.add(disk.toString());
        try {
            return new ProcessBuilder(command)
                            .redirectErrorStream(true)
                            .redirectOutput(ProcessBuilder.Redirect.DISCARD)
                            .start()
                            .waitFor()
                    == 0;
        } catch (java.io.IOException | InterruptedException e) {
            return false;
        }
    }

    @Test
    void aFullDiskLosesNothingAndWorkGoesOnOnceThereIsRoom() throws Exception {
        Path ballast = disk.resolve("ballast");
        int refused = 0;
        int backups = 0;
        try (VisitStore store = VisitStore.open(file)) {
            for (int round = 0; round < ROUNDS; round++) {
                Records records = Records.fill(store, 5000 + round, 2);
                fill(ballast);
                refused += refusals(store, records);
                fill(ballast);
                StoreException noBackup = assertThrows(
                        StoreException.class, () -> Backups.beside(file).make(store, Instant.now()));
                assertEquals(Problem.DISK_FULL, noBackup.problem(), noBackup.getMessage());
                backups++;
                Files.delete(ballast);
                assertEquals(records.written(), store.history(records.visit().id()), "nothing lost, nothing half");
                records.append(store, 2);
                assertEquals(records.written(), store.history(records.visit().id()));
                store.integrityCheck();
            }
        }
        try (Stream<Path> left = Files.list(disk.resolve("backups"))) {
            assertEquals(0, left.count(), "no unfinished copy stays");
        }
        FaultTable.row(
                "disk-full",
                "disk really full (a small file system, filled to the last byte)",
                refused + backups,
                0,
                "\"There is no room left to write … Nothing was stored. Free some space …\"; stored once there was room");
    }

    /** Takes all the room there is. */
    private static void fill(Path ballast) throws Exception {
        try (var out = Files.newOutputStream(ballast, StandardOpenOption.CREATE, StandardOpenOption.APPEND)) {
            for (int size = 65_536; size > 0; size /= 2) {
                try {
                    while (true) {
                        out.write(new byte[size]);
                    }
                } catch (java.io.IOException full) {
                    assertTrue(full.getMessage().contains("No space"), full.getMessage());
                }
            }
        }
    }

    private static int refusals(VisitStore store, Records records) throws Exception {
        for (int event = 0; event < 2000; event++) {
            try {
                records.append(store, 1);
            } catch (JournalException e) {
                assertEquals(Problem.DISK_FULL, ((StoreException) e.getCause()).problem(), e.getMessage());
                assertTrue(e.getMessage().contains("Nothing was stored"), e.getMessage());
                return 1;
            }
        }
        throw new AssertionError("the disk never was full");
    }

    @Test
    void aDiskThatCannotBeWrittenIsSaidAndItsRecordsCanBeSeen() throws Exception {
        Records records;
        Path backup;
        try (VisitStore store = VisitStore.open(file)) {
            records = Records.fill(store, 5100, 30);
            backup = Backups.beside(file).make(store, Instant.EPOCH).file();
        }
        assertTrue(mount("-o", "remount,ro"), "the disk can be made read-only");
        List<String> refusals = new ArrayList<>();
        refusals.add(refusal(() -> VisitStore.open(file).close()));
        refusals.add(refusal(() -> VisitStore.open(disk.resolve("new.db")).close()));
        refusals.add(refusal(() -> Backups.restore(backup, file, Instant.EPOCH)));
        refusals.add(refusal(() -> new KeptSound(disk.resolve("sound")).begin(1)));
        try (VisitStore store = VisitStore.openReadOnly(file)) {
            assertEquals(records.written(), store.history(records.visit().id()));
            store.integrityCheck();
            refusals.add(refusal(() -> store.begin(Records.PATIENT, Records.START, "")));
            refusals.add(refusal(() -> Backups.beside(file).make(store, Instant.now())));
        }
        FaultTable.row(
                "disk-read-only",
                "folder on a read-only file system",
                refusals.size(),
                0,
                "\"… cannot be written to. Nothing was stored. Check the permissions …\"; the records can be looked at");
    }

    private interface Task {
        void run() throws StoreException;
    }

    private static String refusal(Task task) {
        StoreException refused = assertThrows(StoreException.class, task::run);
        assertEquals(Problem.NOT_WRITABLE, refused.problem(), refused.getMessage());
        assertFalse(String.valueOf(refused.getMessage()).contains("Exception"), refused.getMessage());
        return String.valueOf(refused.getMessage());
    }
}
