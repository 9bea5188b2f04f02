package org.arcsay.store;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTimeoutPreemptively;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Duration;
import java.util.Random;
import org.arcsay.model.JournalEvent;
import org.arcsay.model.PatientCode;
import org.arcsay.session.JournalException;
import org.arcsay.store.Database.Connector;
import org.arcsay.store.StoreException.Problem;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Large records are looked through while they can be read, and nothing is written into them before. */
class LargeRecordsTest {
    /** Takes every file for a large one. */
    private static final Opening LARGE = new Opening(Connector.DRIVER, Schema.CURRENT, Clock.systemUTC(), 0);

    private static final int DAMAGES = 40;
    private static final Duration LONGEST = Duration.ofSeconds(30);

    @TempDir
    private Path folder;

    private Path file;
    private Records records;

    @BeforeEach
    void store() throws Exception {
        file = folder.resolve("arcsay.db");
        try (VisitStore store = VisitStore.open(file)) {
            records = Records.fill(store, 17, 200);
        }
    }

    @Test
    void soundRecordsAreReadAtOnceAndWritten() throws Exception {
        try (VisitStore store = VisitStore.open(file, LARGE)) {
            assertEquals(records.written(), store.history(1));
            store.begin(new PatientCode("NEW-1"), Records.START, "");
            store.journal(1).append(new JournalEvent.Ended(Records.START, ""));
        }
        try (VisitStore store = VisitStore.open(file)) {
            assertTrue(store.knows(new PatientCode("NEW-1")));
            assertEquals(records.written().size() + 1, store.history(1).size());
        }
    }

    @Test
    void whatIsRefusedAtOnceWhenSmallIsNeverWrittenIntoWhenLarge() throws Exception {
        byte[] whole = Files.readAllBytes(file);
        Random random = new Random(18);
        int seen = 0;
        int opened = 0;
        for (int input = 0; seen < DAMAGES && input < 4000; input++) {
            byte[] spoiled = Mutation.of(whole, random);
            Files.write(file, spoiled);
            if (isRefusedAsDamaged()) {
                seen++;
                opened += assertTimeoutPreemptively(LONGEST, this::isOpenedAndRefused) ? 1 : 0;
                assertArrayEquals(spoiled, Files.readAllBytes(file), "something was written");
            }
            DurableFiles.removeDatabase(file);
        }
        assertEquals(DAMAGES, seen);
        assertTrue(opened > DAMAGES / 4, "only " + opened + " could be opened at all");
    }

    private boolean isRefusedAsDamaged() {
        try (VisitStore store = VisitStore.open(file)) {
            return false;
        } catch (StoreException e) {
            return e.problem() == Problem.DAMAGED;
        }
    }

    /** Whether the damage showed only when something was to be stored. */
    private boolean isOpenedAndRefused() throws Exception {
        try (VisitStore store = VisitStore.open(file, LARGE)) {
            StoreException damaged =
                    assertThrows(StoreException.class, () -> store.begin(new PatientCode("NEW-1"), Records.START, ""));
            assertEquals(Problem.DAMAGED, damaged.problem());
            assertTrue(String.valueOf(damaged.getMessage()).contains("good backup"), damaged.getMessage());
            JournalException refused = assertThrows(
                    JournalException.class, () -> store.journal(1).append(new JournalEvent.Ended(Records.START, "")));
            assertTrue(String.valueOf(refused.getMessage()).contains("is damaged"), refused.getMessage());
            return true;
        } catch (StoreException e) {
            assertEquals(Problem.DAMAGED, e.problem());
            return false;
        }
    }

    @Test
    void closingDoesNotWaitForTheLookAndLeavesTheFileToOthers() throws Exception {
        for (int time = 0; time < 30; time++) {
            assertTimeoutPreemptively(
                    LONGEST, () -> VisitStore.open(file, LARGE).close());
        }
        try (VisitStore store = VisitStore.open(file)) {
            assertEquals(records.written(), store.history(1));
        }
    }
}
