package org.arcsay.store;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.Set;
import java.util.stream.Stream;
import org.arcsay.model.ClinicSettings;
import org.arcsay.model.Entry;
import org.arcsay.model.EntryStatus;
import org.arcsay.model.JournalEvent;
import org.arcsay.model.Versions;
import org.arcsay.model.Visit;
import org.arcsay.report.Format;
import org.arcsay.report.ReportWriters;
import org.arcsay.report.content.DemoCase;
import org.arcsay.review.FileDrafts;
import org.arcsay.review.Outcome;
import org.arcsay.review.ReviewContext;
import org.arcsay.review.ReviewModel;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * Kills a process that works with the records at random moments and looks at what is left.
 *
 * <p>The figure of kills is the system property {@code arcsay.kills}, 40 by default, shared among the kinds of work:
 *
 * <pre>./mvnw -q -Dtest=CrashTest,ProgramCrashTest -Darcsay.kills=400 test</pre>
 */
class CrashTest {
    private static final int LONGEST_WAIT_MS = 100;
    private static final int REVIEWED = 60;

    @TempDir
    private Path folder;

    private final Random random = new Random(51);

    /** That share of all kills, two at least. */
    private static int kills(int percent) {
        return Math.max(2, Integer.getInteger("arcsay.kills", 40) * percent / 100);
    }

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

    /** Reviews a visit entry by entry, as a reviewer does, and says what became of each. */
    static final class Reviewer {
        public static void main(String[] arguments) throws Exception {
            Path file = Path.of(arguments[0]);
            long visit = Long.parseLong(arguments[1]);
            Random random = new Random(visit);
            try (VisitStore store = VisitStore.open(file)) {
                ReviewModel model = open(store, visit);
                System.out.println("open");
                for (Entry entry : store.visit(visit).orElseThrow().counting()) {
                    System.out.println(review(model, entry.number(), random.nextInt(3) == 0));
                }
                Thread.sleep(60_000);
            }
        }

        private static ReviewModel open(VisitStore store, long visit) throws StoreException {
            return ReviewModel.open(
                    store.visit(visit).orElseThrow(),
                    store.history(visit),
                    store.journal(visit),
                    (reading, others) -> List.of(),
                    new ReviewContext(
                            Clock.systemUTC(),
                            "HT",
                            new Versions("g", "none", "r"),
                            ClinicSettings.defaults(),
                            Optional.empty(),
                            List.of()),
                    new FileDrafts(store.file().resolveSibling("drafts")));
        }

        private static String review(ReviewModel model, int number, boolean reject) {
            model.markSeen(number);
            if (reject) {
                return told(model.reject(number, "patient moved"), number, EntryStatus.REJECTED);
            }
            model.keepAsSaid(number, "as said");
            Outcome outcome = model.confirm(number);
            return outcome instanceof Outcome.Refused ? "refused" : told(outcome, number, EntryStatus.CONFIRMED);
        }

        private static String told(Outcome outcome, int number, EntryStatus status) {
            if (outcome instanceof Outcome.Done) {
                return number + " " + status;
            }
            throw new IllegalStateException(outcome.message());
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

    /** Puts one of two backups in the place of the database, in turn. */
    static final class Restorer {
        public static void main(String[] arguments) throws Exception {
            System.out.println("ready");
            for (int turn = 0; ; turn++) {
                Backups.restore(Path.of(arguments[1 + turn % 2]), Path.of(arguments[0]), Instant.now());
                System.out.println(turn);
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

    /** Writes reports in every format over older ones and says which are done. */
    static final class Reporter {
        public static void main(String[] arguments) throws Exception {
            System.out.println("ready");
            while (true) {
                for (Format format : Format.values()) {
                    Path file = Path.of(arguments[0], "report." + format.extension());
                    ReportWriters.standard().write(DemoCase.report(), format, file);
                    System.out.println(file.getFileName());
                }
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
    void capturedEventsSurviveKills() throws Exception {
        Path file = folder.resolve("arcsay.db");
        int kills = kills(30);
        int announced = 0;
        int found = 0;
        long visit = 0;
        int before = 0;
        for (int kill = 0; kill < kills; kill++) {
            long seed = 1000 + kill / 2;
            boolean goesOn = kill % 2 == 1;
            List<String> said =
                    killed(12, Writer.class, file.toString(), String.valueOf(seed), String.valueOf(goesOn ? visit : 0));
            visit = Long.parseLong(said.get(0));
            int last = said.size() == 1 ? (goesOn ? before : 0) : Integer.parseInt(said.get(said.size() - 1));
            try (VisitStore store = VisitStore.open(file)) {
                store.integrityCheck();
                List<JournalEvent> history = store.history(visit);
                assertTrue(history.size() >= last, "lost: " + last + " announced, " + history.size() + " found");
                assertTrue(history.size() <= last + 1, "more than one event that nobody announced");
                assertEquals(Records.expected(visit, seed, history.size()).written(), history);
                announced += said.size() - 1;
                found += history.size() - (goesOn ? before : 0);
                before = history.size();
            }
        }
        assertTrue(announced > 0, "no child got as far as storing something");
        FaultTable.row(
                "kill-1-capture",
                "process killed while storing events",
                kills,
                0,
                announced + " announced, " + found + " found, none half");
    }

    @Test
    void whatAReviewerWasToldSurvivesKills() throws Exception {
        Path file = folder.resolve("arcsay.db");
        int kills = kills(15);
        int announced = 0;
        for (int kill = 0; kill < kills; kill++) {
            long visit;
            try (VisitStore store = VisitStore.open(file)) {
                visit = Records.fill(store, 2000 + kill, REVIEWED).visit().id();
            }
            List<String> said = killed(8, Reviewer.class, file.toString(), String.valueOf(visit));
            try (VisitStore store = VisitStore.open(file)) {
                store.integrityCheck();
                Visit found = store.visit(visit).orElseThrow();
                for (String line : said.subList(1, said.size())) {
                    if (!line.equals("refused")) {
                        String[] told = line.split(" ");
                        Entry entry = found.entry(Integer.parseInt(told[0])).orElseThrow();
                        assertEquals(EntryStatus.valueOf(told[1]), entry.status(), line);
                        announced++;
                    }
                }
            }
        }
        assertTrue(announced > 0, "no child got as far as reviewing something");
        FaultTable.row(
                "kill-2-review",
                "process killed while reviewing",
                kills,
                0,
                announced + " confirmations and rejections announced, all found");
    }

    @Test
    void backupsAreWholeOrNotThere() throws Exception {
        Path file = folder.resolve("arcsay.db");
        int kills = kills(15);
        try (VisitStore store = VisitStore.open(file)) {
            Records.fill(store, 52, 60);
        }
        Set<String> announced = new HashSet<>();
        for (int kill = 0; kill < kills; kill++) {
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
        FaultTable.row(
                "kill-3-backup",
                "process killed while backing up",
                kills,
                0,
                announced.size() + " backups announced, " + names.size() + " found, all whole");
    }

    @Test
    void aKilledRestoreLeavesOneOfTheTwo() throws Exception {
        Path file = folder.resolve("arcsay.db");
        int kills = kills(10);
        Path shorter;
        Path longer;
        try (VisitStore store = VisitStore.open(file)) {
            Records records = Records.fill(store, 53, 40);
            shorter = Backups.beside(file).make(store, Instant.EPOCH).file();
            records.append(store, 20);
            longer = Backups.beside(file).make(store, Instant.EPOCH).file();
        }
        Map<Integer, Integer> found = new HashMap<>();
        for (int kill = 0; kill < kills; kill++) {
            killed(4, Restorer.class, file.toString(), shorter.toString(), longer.toString());
            try (VisitStore store = VisitStore.open(file)) {
                store.integrityCheck();
                int events = store.history(1).size();
                assertEquals(Records.expected(1, 53, events).written(), store.history(1));
                found.merge(events, 1, Integer::sum);
            }
        }
        assertTrue(Set.of(40, 60).containsAll(found.keySet()), found.toString());
        FaultTable.row(
                "kill-4-restore",
                "process killed while restoring",
                kills,
                0,
                "the one or the other state, always whole; the replaced file is kept");
    }

    @Test
    void aKilledChangeOfTheSchemaLeavesTheOldOrTheNew() throws Exception {
        int kills = kills(15);
        int migrated = 0;
        int old = 0;
        for (int kill = 0; kill < kills; kill++) {
            List<String> files = new ArrayList<>();
            for (int copy = 0; copy < 6; copy++) {
                Path data = Files.createDirectories(folder.resolve("m" + kill + "/" + copy));
                SchemaTest.copySample(1, data.resolve("arcsay.db"));
                files.add(data.resolve("arcsay.db").toString());
            }
            List<String> said = killed(5, Migrator.class, files.toArray(new String[0]));
            for (String name : files) {
                boolean done = isAtNext(Path.of(name));
                assertTrue(done || !said.contains(name), "announced as migrated, and is not");
                migrated += done ? 1 : 0;
                old += done ? 0 : 1;
                try (VisitStore store = VisitStore.open(Path.of(name), Schemas.next())) {
                    SchemaTest.assertHoldsSample(store, 1);
                }
            }
        }
        FaultTable.row(
                "kill-5-schema",
                "process killed while changing the schema",
                kills,
                0,
                migrated + " files at the new schema, " + old + " at the old one, all whole");
    }

    /** A change that was cut off before its commit will be taken back, so such a file is at the old schema. */
    private static boolean isAtNext(Path file) throws StoreException {
        try (Database looked = Schemas.next().forReading(file)) {
            looked.requireSound("integrity_check");
            return looked.header().userVersion() == Schema.CURRENT.scripts().size() + 1;
        } catch (StoreException e) {
            assertEquals(StoreException.Problem.INTERRUPTED, e.problem(), e.getMessage());
            return false;
        }
    }

    @Test
    void aReportIsWholeOrTheOlderOne() throws Exception {
        int kills = kills(10);
        Map<String, byte[]> whole = new HashMap<>();
        for (Format format : Format.values()) {
            ByteArrayOutputStream out = new ByteArrayOutputStream();
            ReportWriters.standard().write(DemoCase.report(), format, out);
            whole.put("report." + format.extension(), out.toByteArray());
            Files.writeString(folder.resolve("report." + format.extension()), "older");
        }
        int announced = 0;
        for (int kill = 0; kill < kills; kill++) {
            List<String> said = killed(9, Reporter.class, folder.toString());
            announced += said.size() - 1;
            for (String name : whole.keySet()) {
                byte[] found = Files.readAllBytes(folder.resolve(name));
                if (said.contains(name) || found.length != "older".length()) {
                    assertArrayEquals(whole.get(name), found, name);
                }
            }
        }
        FaultTable.row(
                "kill-6-report",
                "process killed while writing reports",
                kills,
                0,
                announced + " reports announced, all whole; " + unfinished(folder)
                        + " unfinished file left, written over next time");
    }

    private static long unfinished(Path folder) throws IOException {
        try (Stream<Path> files = Files.list(folder)) {
            return files.filter(file -> file.toString().endsWith(DurableFiles.UNFINISHED))
                    .count();
        }
    }
}
