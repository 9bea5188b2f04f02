package org.arcsay.store;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTimeoutPreemptively;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.Random;
import org.arcsay.model.JournalEvent;
import org.arcsay.session.JournalException;
import org.arcsay.store.StoreException.Problem;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * Opens spoiled files: the answer is a message, or exactly what was stored, and never another value.
 *
 * <p>The figure of inputs is the system property {@code arcsay.fuzz}; 400 for each test by default.
 */
class DamagedFileTest {
    private static final int INPUTS = Integer.getInteger("arcsay.fuzz", 400);
    private static final int EVENTS = 40;
    private static final Duration LONGEST = Duration.ofSeconds(30);

    @TempDir
    private Path folder;

    private Path file;
    private Records records;
    private int refused;
    private int shown;
    private int dropped;

    @BeforeEach
    void store() throws Exception {
        file = folder.resolve("arcsay.db");
        try (VisitStore store = VisitStore.open(file)) {
            records = Records.fill(store, 91, EVENTS);
        }
    }

    @Test
    void aSpoiledDatabaseIsRefusedOrShowsWhatWasStored() throws Exception {
        byte[] whole = Files.readAllBytes(file);
        Random random = new Random(92);
        for (int input = 0; input < INPUTS; input++) {
            Files.write(file, Mutation.of(whole, random));
            assertTimeoutPreemptively(LONGEST, this::use);
            DurableFiles.removeDatabase(file);
        }
        report("the-records-file");
    }

    @Test
    void aSpoiledLogIsRefusedOrShowsTheFirstEvents() throws Exception {
        byte[] whole;
        byte[] log;
        try (VisitStore store = VisitStore.open(file)) {
            records.append(store, 10);
            whole = Files.readAllBytes(file);
            log = Files.readAllBytes(DurableFiles.log(file));
        }
        Random random = new Random(93);
        for (int input = 0; input < INPUTS; input++) {
            DurableFiles.removeDatabase(file);
            Files.write(file, whole);
            Files.write(DurableFiles.log(file), Mutation.of(log, random));
            assertTimeoutPreemptively(LONGEST, this::use);
        }
        report("its-write-ahead-log");
    }

    @Test
    void everyDigitOfEveryReadingIsGuarded() throws Exception {
        String bytes = new String(Files.readAllBytes(file), StandardCharsets.ISO_8859_1);
        Random random = new Random(94);
        int changed = 0;
        for (int at = bytes.indexOf("degrees"); at > 0; at = bytes.indexOf("degrees", at + 1)) {
            char digit = bytes.charAt(at - 1);
            if (Character.isDigit(digit)) {
                char other = (char) ('1' + (digit - '1' + 1 + random.nextInt(7)) % 9);
                String spoiled = bytes.substring(0, at - 1) + other + bytes.substring(at);
                Files.write(file, spoiled.getBytes(StandardCharsets.ISO_8859_1));
                changed += other == digit ? 0 : 1;
                try (VisitStore store = VisitStore.open(file)) {
                    StoreException damaged =
                            assertThrows(StoreException.class, () -> store.history(1), digit + " became " + other);
                    assertEquals(Problem.DAMAGED, damaged.problem());
                }
            }
        }
        assertTrue(changed > 10, "only " + changed + " digits were changed");
        FaultTable.row(
                "spoiled-digit",
                "one digit of a value changed on the disk",
                changed,
                0,
                "\"… is damaged …\" every time; no value of the visit is shown");
    }

    private void use() throws Exception {
        try (VisitStore store = VisitStore.open(file)) {
            store.recent(10);
            store.patients();
            var history = store.history(1);
            assertTrue(history.size() <= records.written().size());
            assertEquals(records.written().subList(0, history.size()), history);
            dropped += records.written().size() - history.size();
            store.journal(1).append(new JournalEvent.Ended(Records.START, ""));
            shown++;
        } catch (StoreException | JournalException e) {
            assertFalse(String.valueOf(e.getMessage()).contains("Exception"), e.getMessage());
            refused++;
        }
        try (VisitStore store = VisitStore.openReadOnly(file)) {
            store.recent(10);
        } catch (StoreException e) {
            assertFalse(String.valueOf(e.getMessage()).contains("Exception"), e.getMessage());
        }
    }

    private void report(String what) throws IOException {
        FaultTable.row(
                "spoiled-" + what,
                "spoiled bytes in " + what.replace('-', ' '),
                INPUTS,
                dropped,
                refused + " refused with a message, " + shown + " read, none as something else than was stored"
                        + (dropped == 0 ? "" : "; nothing tells of the events behind the damage"));
    }
}
