package org.arcsay.store;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import org.arcsay.model.JournalEvent;
import org.arcsay.model.Visit;
import org.arcsay.session.JournalException;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Makes write or force 1, 2, 3 … to the real disk fail, under SQLite and under Java, until a run passes untouched. */
class FailingDiskTest {
    private static final long SEED = 81;
    private static final int EVENTS = 2;

    /** Does the work once for each call that fails, compares what it told with what is stored, and says the figures. */
    static final class Worker {
        private final Path folder;
        private final Path number;
        private int faults;
        private int refused;

        private Worker(Path folder, Path number) {
            this.folder = folder;
            this.number = number;
        }

        public static void main(String[] arguments) throws Exception {
            Worker worker = new Worker(Path.of(arguments[0]), Path.of(arguments[1]));
            for (int call = 1; worker.run(call); call++) {
                worker.faults = call;
            }
            FaultTable.row(
                    "call-0-disk",
                    "write or force n on the real disk fails while creating, storing, backing up",
                    worker.faults,
                    0,
                    "\"There is no room left …\" or \"Reading or writing … failed …\" each time it mattered ("
                            + worker.refused + "); stored at the second try");
        }

        /** Whether a call failed. */
        private boolean run(int call) throws Exception {
            Path file = folder.resolve(call + "/arcsay.db");
            Files.createDirectory(file.getParent());
            failAt(call);
            List<JournalEvent> told = work(file);
            boolean failed = Files.readString(number).strip().equals("0");
            failAt(0);
            try (VisitStore store = VisitStore.open(file)) {
                store.integrityCheck();
                require(
                        told.equals(store.history(1)),
                        "call " + call + ": told " + told.size() + ", found "
                                + store.history(1).size());
                for (Backup backup : Backups.beside(file).list()) {
                    try (VisitStore copy = VisitStore.openReadOnly(backup.file())) {
                        copy.integrityCheck();
                    }
                }
            }
            return failed;
        }

        private void failAt(int call) throws Exception {
            Files.write(number, "%-20d".formatted(call).getBytes(StandardCharsets.US_ASCII));
        }

        /** Creates, stores and backs up; what is refused is tried again. */
        private List<JournalEvent> work(Path file) throws Exception {
            List<JournalEvent> told = new ArrayList<>();
            try (VisitStore store = again(() -> VisitStore.open(file))) {
                Visit visit = again(() -> store.begin(Records.PATIENT, Records.START, ""));
                for (JournalEvent event :
                        Records.expected(visit.id(), SEED, EVENTS).written()) {
                    again(() -> {
                        store.journal(visit.id()).append(event);
                        return told.add(event);
                    });
                }
                again(() -> Backups.beside(file).make(store, Instant.EPOCH));
            } catch (StoreException e) {
                refusal(e);
            }
            return told;
        }

        private interface Task<T> {
            T run() throws StoreException, JournalException;
        }

        private <T> T again(Task<T> task) throws Exception {
            try {
                return task.run();
            } catch (StoreException | JournalException e) {
                refusal(e);
                return task.run();
            }
        }

        private void refusal(Exception e) {
            refused++;
            String message = String.valueOf(e.getMessage());
            require(!message.contains("Exception") && !message.contains("SQLITE"), message);
        }

        private static void require(boolean condition, String message) {
            if (!condition) {
                throw new IllegalStateException(message);
            }
        }
    }

    @Test
    void whatWasToldIsWhatIsStoredWhicheverWriteFails(@TempDir Path temp) throws Exception {
        Path folder = Files.createDirectory(temp.resolve("work"));
        PreloadedDisk disk = PreloadedDisk.compile(temp);
        Path number = Files.createFile(temp.resolve("number"));
        try (ChildJvm worker =
                ChildJvm.start(disk.failing(folder, number), Worker.class, folder.toString(), number.toString())) {
            List<String> said = worker.rest();
            said.forEach(System.out::println);
            assertEquals(0, worker.exit(), said.toString());
        }
    }
}
