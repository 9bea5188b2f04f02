package org.arcsay.store;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;

/** Run by hand: how long it takes to store one event, and to read a visit back, in a folder on the disk to be measured. */
final class CommitTimes {
    private static final int VISITS = 5;
    private static final int EVENTS = 100;

    private CommitTimes() {}

    public static void main(String[] arguments) throws Exception {
        Path file = Files.createTempDirectory(Path.of(arguments[0]), "times").resolve("arcsay.db");
        double[] times = new double[VISITS * EVENTS];
        try (VisitStore store = VisitStore.open(file)) {
            for (int visit = 0; visit < VISITS; visit++) {
                Records records = Records.fill(store, visit, 0);
                for (int event = 0; event < EVENTS; event++) {
                    long before = System.nanoTime();
                    records.append(store, 1);
                    times[visit * EVENTS + event] = (System.nanoTime() - before) / 1e6;
                }
            }
            long before = System.nanoTime();
            store.visits(Records.PATIENT);
            double all = (System.nanoTime() - before) / 1e6;
            Arrays.sort(times, EVENTS, times.length);
            int measured = times.length - EVENTS;
            System.out.printf(
                    "storing one event: median %.1f ms, 95th percentile %.1f ms; reading %d visits of %d events: %.0f ms%n",
                    times[EVENTS + measured / 2], times[EVENTS + measured * 95 / 100], VISITS, EVENTS, all);
        }
    }
}
