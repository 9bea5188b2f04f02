package org.arcsay.store;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Random;
import java.util.Set;
import org.arcsay.model.JournalEvent;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * Kills a process that works with the records at random moments and looks at what is left.
 *
 * <p>The figure of kills is the system property {@code arcsay.kills}, split evenly among the four kinds of work; 32 by default.
 */
class CrashTest {
    private static final int KILLS = Integer.getInteger("arcsay.kills", 32) / 4;
    private static final int LONGEST_WAIT_MS = 100;

    @TempDir
    private Path folder;

    private final Random random = new Random(51);

    /** Begins a visit, or goes on with one, and says how many events are stored. */
    static final class Writer {
        public static void main(String[] arguments) throws Exception {
            Path file = Path.of(arguments[0]);
            long seed = Long.parseLong(arguments[1]);
            long visit = Long.parseLong(arguments[2]);
            try (VisitStore store = VisitStore.open(file)) {
                Records records = visit == 0
                        ? Records.fill(store, seed, 0)
                        : Records.expected(visit, seed, store.history(visit).size());
                System.out.println(records.visit().id());
                while (true) {
                    records.append(store, 1);
                    System.out.println(records.written().size());
                }
            }
        }
    }

    /** Makes backup after backup and says their names. */
    static final class BackupMaker {
        public static void main(String[] arguments) throws Exception {
            Path file = Path.of(arguments[0]);
            try (VisitStore store = VisitStore.open(file)) {
                System.out.println("open");
                while (true) {
                    System.out.println(
                            Backups.beside(file).make(store, Instant.now()).file());
                }
            }
        }
    }

    /** Brings one file after the other to a newer schema and says which are done. */
    static final class Migrator {
        public static void main(String[] arguments) throws Exception {
            System.out.println("ready");
            for (String file : arguments) {
                VisitStore.open(Path.of(file), Schemas.next()).close();
                System.out.println(file);
            }
        }
    }

    /** What a child said before it was killed, a random moment after a random one of its first lines. */
    private List<String> killed(int lines, Class<?> program, String... arguments) throws Exception {
        try (ChildJvm child = ChildJvm.start(program, arguments)) {
            List<String> said = new ArrayList<>();
            for (int i = random.nextInt(lines); i >= 0; i--) {
                said.add(assertNotNullLine(child));
            }
            Thread.sleep(random.nextInt(LONGEST_WAIT_MS));
            child.kill();
            said.addAll(child.rest());
            return said;
        }
    }

    private static String assertNotNullLine(ChildJvm child) throws Exception {
        String line = child.line();
        assertNotNull(line, "the child ended by itself");
        return line;
    }

    @Test
    void capturedAndReviewedEventsSurviveKills() throws Exception {
        Path file = folder.resolve("arcsay.db");
        int announced = 0;
        int found = 0;
        long visit = 0;
        int before = 0;
        for (int kill = 0; kill < 2 * KILLS; kill++) {
            long seed = 1000 + kill / 2;
            boolean review = kill % 2 == 1;
            List<String> said =
                    killed(12, Writer.class, file.toString(), String.valueOf(seed), String.valueOf(review ? visit : 0));
            visit = Long.parseLong(said.get(0));
            int last = said.size() == 1 ? (review ? before : 0) : Integer.parseInt(said.get(said.size() - 1));
            try (VisitStore store = VisitStore.open(file)) {
                store.integrityCheck();
                List<JournalEvent> history = store.history(visit);
                assertTrue(history.size() >= last, "lost: " + last + " announced, " + history.size() + " found");
                assertTrue(history.size() <= last + 1, "more than one event that nobody announced");
                assertEquals(Records.expected(visit, seed, history.size()).written(), history);
                announced += said.size() - 1;
                found += history.size() - (review ? before : 0);
                before = history.size();
            }
        }
        assertTrue(announced > 0, "no child got as far as storing something");
        report("capture and review", 2 * KILLS, announced + " events announced, " + found + " found, 0 lost");
    }

    @Test
    void backupsAreWholeOrNotThere() throws Exception {
        Path file = folder.resolve("arcsay.db");
        try (VisitStore store = VisitStore.open(file)) {
            Records.fill(store, 52, 60);
        }
        Set<String> announced = new HashSet<>();
        for (int kill = 0; kill < KILLS; kill++) {
            List<String> said = killed(3, BackupMaker.class, file.toString());
            announced.addAll(said.subList(1, said.size()));
        }
        List<Backup> left = Backups.beside(file).list();
        for (Backup backup : left) {
            try (VisitStore store = VisitStore.openReadOnly(backup.file())) {
                store.integrityCheck();
                assertEquals(Records.expected(1, 52, 60).written(), store.history(1));
            }
        }
        Set<String> names = new HashSet<>();
        left.forEach(backup -> names.add(backup.file().toString()));
        assertTrue(names.containsAll(announced), "an announced backup is gone");
        report("backup", KILLS, announced.size() + " backups announced, " + names.size() + " found, all whole");
    }

    @Test
    void aKilledChangeOfTheSchemaLeavesTheOldOrTheNew() throws Exception {
        int migrated = 0;
        int old = 0;
        for (int kill = 0; kill < KILLS; kill++) {
            List<String> files = new ArrayList<>();
            for (int copy = 0; copy < 6; copy++) {
                Path data = Files.createDirectories(folder.resolve("m" + kill + "/" + copy));
                SchemaTest.copySample(1, data.resolve("arcsay.db"));
                files.add(data.resolve("arcsay.db").toString());
            }
            List<String> said = killed(5, Migrator.class, files.toArray(new String[0]));
            for (String name : files) {
                boolean done = isAt2(Path.of(name));
                assertTrue(done || !said.contains(name), "announced as migrated, and is not");
                migrated += done ? 1 : 0;
                old += done ? 0 : 1;
                try (VisitStore store = VisitStore.open(Path.of(name), Schemas.next())) {
                    SchemaTest.assertHoldsSample(store, 1);
                }
            }
        }
        report("change of schema", KILLS, migrated + " files at the new schema, " + old + " at the old one, all whole");
    }

    /** A change that was cut off before its commit will be taken back, so such a file is at the old schema. */
    private static boolean isAt2(Path file) throws StoreException {
        try (Database looked = Schemas.next().forReading(file)) {
            looked.requireSound("integrity_check");
            return looked.header().userVersion() == 2;
        } catch (StoreException e) {
            assertEquals(StoreException.Problem.INTERRUPTED, e.problem(), e.getMessage());
            return false;
        }
    }

    private static void report(String work, int kills, String result) {
        System.out.println("killed " + kills + " times during " + work + ": " + result);
    }
}
