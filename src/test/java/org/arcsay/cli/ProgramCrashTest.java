package org.arcsay.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.arcsay.Main;
import org.arcsay.model.JournalEvent;
import org.arcsay.store.ChildJvm;
import org.arcsay.store.FaultTable;
import org.arcsay.store.VisitStore;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * Kills the program itself, from microphone-like sound to disk, a random moment after it announced a random reading of a real
 * recording. The figure of kills is 5 in 100 of {@code arcsay.kills}.
 */
class ProgramCrashTest {
    private static final int LONGEST_WAIT_MS = 300;
    private static final int READINGS = 15;

    @TempDir
    private Path home;

    private final Random random = new Random(52);

    @Test
    void everyReadingThatWasAnnouncedIsThereAfterAKill() throws Exception {
        assertEquals(ExitCode.OK, new Shell(home).arcsay("demo").code());
        List<String> whole = taken(1);
        int kills = Math.max(2, Integer.getInteger("arcsay.kills", 40) * 5 / 100);
        int announced = 0;
        int found = 0;
        for (int kill = 1; kill <= kills; kill++) {
            List<String> told = killedAfter(random.nextInt(READINGS));
            new Shell(home).arcsay("check-records").mustSay(ExitCode.OK);
            List<String> stored = taken(1 + kill);
            assertTrue(stored.size() >= told.size(), told.size() + " announced, " + stored.size() + " found");
            assertEquals(told, stored.subList(0, told.size()), "what was announced is what is stored");
            assertEquals(whole.subList(0, stored.size()), stored, "nothing but what was said");
            announced += told.size();
            found += stored.size();
        }
        FaultTable.row(
                "kill-0-program",
                "the program killed while it listens to a recording",
                kills,
                0,
                announced + " readings announced on the screen, " + found
                        + " found; the next command works without repair");
    }

    private List<String> killedAfter(int readings) throws Exception {
        try (ChildJvm program = ChildJvm.start(Main.class, "demo", "--home", home.toString())) {
            List<String> told = new ArrayList<>();
            while (told.size() <= readings) {
                String line = program.line();
                assertTrue(line != null, "the program ended by itself");
                told(line, told);
            }
            Thread.sleep(random.nextInt(LONGEST_WAIT_MS));
            program.kill();
            for (String line : program.rest()) {
                told(line, told);
            }
            return told;
        }
    }

    /** Adds the reading that a line of the screen announces, if it does. */
    private static void told(String line, List<String> told) {
        String answer = line.strip();
        for (String announces : List.of("-> saved: ", "-> corrected: ")) {
            if (answer.startsWith(announces)) {
                told.add(answer.substring(announces.length()).replaceAll(" \\(was .*", ""));
            }
        }
    }

    private List<String> taken(long visit) throws Exception {
        try (VisitStore store = VisitStore.openReadOnly(home.resolve("arcsay.db"))) {
            return store.history(visit).stream()
                    .filter(JournalEvent.Taken.class::isInstance)
                    .map(event -> ((JournalEvent.Taken) event).reading().words())
                    .toList();
        }
    }
}
