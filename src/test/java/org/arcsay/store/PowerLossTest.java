package org.arcsay.store;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Random;
import java.util.Set;
import java.util.TreeSet;
import org.arcsay.model.JournalEvent;
import org.arcsay.store.RecordedDisk.Step;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * Takes the power away between any two steps that a process took on its disk and looks at what the next start finds.
 *
 * <p>The figure of losses is the system property {@code arcsay.powerlosses}; 100 by default.
 */
class PowerLossTest {
    private static final int LOSSES = Integer.getInteger("arcsay.powerlosses", 100);
    private static final long SEED = 71;

    /** Creates a database and stores events, with a checkpoint in between; writes down what it has told the user. */
    static final class Worker {
        public static void main(String[] arguments) throws Exception {
            Path folder = Path.of(arguments[0]);
            Path told = folder.resolve("told");
            Path file = folder.resolve("arcsay.db");
            Records records;
            try (VisitStore store = VisitStore.open(file)) {
                records = Records.fill(store, SEED, 0);
                append(store, records, 8, told);
            }
            try (VisitStore store = VisitStore.open(file)) {
                append(store, records, 8, told);
            }
        }

        private static void append(VisitStore store, Records records, int events, Path told) throws Exception {
            for (int i = 0; i < events; i++) {
                records.append(store, 1);
                Files.writeString(told, String.valueOf(records.written().size()));
            }
        }
    }

    @Test
    void everyEventThatWasToldIsThereAfterALossOfPower(@TempDir Path temp) throws Exception {
        Path folder = Files.createDirectory(temp.resolve("work"));
        Path log = temp.resolve("log");
        PreloadedDisk disk = PreloadedDisk.compile(temp);
        try (ChildJvm worker = ChildJvm.start(disk.recording(folder, log), Worker.class, folder.toString())) {
            assertEquals(List.of(), worker.rest());
            assertEquals(0, worker.exit());
        }
        List<Step> steps = RecordedDisk.read(log);
        assertTrue(steps.stream().filter(step -> step.kind() == 'S').count() > 16, "nothing was forced to the disk");
        Random random = new Random(72);
        Set<Integer> moments = new TreeSet<>();
        while (moments.size() < Math.min(LOSSES, steps.size())) {
            moments.add(random.nextInt(steps.size()) + 1);
        }
        RecordedDisk state = new RecordedDisk(folder);
        int told = 0;
        int unannounced = 0;
        for (int moment = 1; moment <= steps.size(); moment++) {
            Step step = steps.get(moment - 1);
            if (step.path().endsWith("/told")) {
                told = step.kind() == 'W' ? Integer.parseInt(new String(step.bytes(), StandardCharsets.UTF_8)) : told;
            } else if (!step.path().endsWith("-shm") && !step.path().endsWith(".lock")) {
                state.apply(step);
            }
            if (moments.contains(moment)) {
                Path left = Files.createDirectory(temp.resolve("left" + moment));
                state.lose(random, left);
                unannounced += assertWhole(left, told, "after step " + moment + " of " + steps.size());
            }
        }
        FaultTable.row(
                "power",
                "power lost between two of " + steps.size()
                        + " steps on the disk, unforced sectors there or not by chance",
                moments.size(),
                0,
                "nothing; " + unannounced + " times one event more than was told");
    }

    private static int assertWhole(Path folder, int told, String when) throws Exception {
        try (VisitStore store = VisitStore.open(folder.resolve("arcsay.db"))) {
            store.integrityCheck();
            List<JournalEvent> found = store.history(1);
            assertTrue(found.size() >= told, told + " told, " + found.size() + " found " + when);
            assertTrue(found.size() <= told + 1, told + " told, " + found.size() + " found " + when);
            assertEquals(Records.expected(1, SEED, found.size()).written(), found, when);
            return found.size() - told;
        } catch (StoreException e) {
            throw new AssertionError(when + ": " + e.getMessage(), e);
        }
    }
}
