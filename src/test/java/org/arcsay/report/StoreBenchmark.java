package org.arcsay.report;

import java.io.ByteArrayOutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.Callable;
import org.arcsay.model.JournalEvent;
import org.arcsay.model.PatientCode;
import org.arcsay.model.Visit;
import org.arcsay.report.content.DemoCase;
import org.arcsay.report.content.FullSeries;
import org.arcsay.report.content.Report;
import org.arcsay.report.content.VisitRecord;
import org.arcsay.session.Journal;
import org.arcsay.store.VisitStore;
import org.arcsay.store.WholeVisit;

/**
 * Readings stored in a second, and how opening, listing and reporting grow with the records: {@code StoreBenchmark FOLDER
 * [VISITS [SECONDS]]}. Every patient has ten visits with the full series of both hands. The growth ends at so many visits, or
 * when adding them has taken so many seconds.
 */
public final class StoreBenchmark {
    private static final int VISITS_OF_ONE = 10;
    private static final int STEP = 100;
    private static final int RUNS = 5;
    private static final List<VisitRecord> SERIES = FullSeries.visits(VISITS_OF_ONE);

    private StoreBenchmark() {}

    public static void main(String[] args) throws Exception {
        Path folder = Files.createTempDirectory(Path.of(args[0]), "store-benchmark");
        int most = args.length > 1 ? Integer.parseInt(args[1]) : 100_000;
        Duration time = Duration.ofSeconds(args.length > 2 ? Long.parseLong(args[2]) : 180);
        oneByOne(folder.resolve("single.db"));
        grow(folder.resolve("growing.db"), most, time);
    }

    /** As capture does it: each event in a transaction of its own, on the disk before the next one. */
    private static void oneByOne(Path file) throws Exception {
        try (VisitStore store = VisitStore.open(file)) {
            int readings = 0;
            long begin = System.nanoTime();
            for (VisitRecord record : SERIES) {
                Visit visit = store.begin(new PatientCode("P-1"), record.visit().startedAt(), "");
                Journal journal = store.journal(visit.id());
                for (JournalEvent event : record.journal()) {
                    if (event instanceof JournalEvent.Taken) {
                        journal.append(event);
                        readings++;
                    }
                }
            }
            double seconds = (System.nanoTime() - begin) / 1e9;
            System.out.printf(
                    Locale.ROOT, "one by one: %d readings, %.0f readings per second%n", readings, readings / seconds);
        }
    }

    private static void grow(Path file, int most, Duration time) throws Exception {
        Growth growth = new Growth(file, time);
        for (int goal = STEP; goal <= most && !growth.late(); goal *= 10) {
            growth.to(goal);
            use(file, growth.visits);
        }
    }

    /** For one thread. A records file that visits are added to until the time is spent. */
    private static final class Growth {
        private final Path file;
        private final Duration time;
        private Duration spent = Duration.ZERO;
        private int visits;
        private long readings;

        Growth(Path file, Duration time) {
            this.file = file;
            this.time = time;
        }

        boolean late() {
            return spent.compareTo(time) >= 0;
        }

        void to(int goal) throws Exception {
            try (VisitStore store = VisitStore.open(file)) {
                while (visits < goal && !late()) {
                    List<WholeVisit> more = patients(visits);
                    long begin = System.nanoTime();
                    for (Visit added : store.addAll(more)) {
                        readings += added.counting().size();
                    }
                    spent = spent.plusNanos(System.nanoTime() - begin);
                    visits += more.size();
                }
            }
            System.out.printf(
                    Locale.ROOT,
                    "%d visits, %d readings, %.0f MB, added in %.0f s%n",
                    visits,
                    readings,
                    Files.size(file) / 1e6,
                    spent.toMillis() / 1e3);
        }
    }

    private static List<WholeVisit> patients(int first) {
        List<WholeVisit> made = new ArrayList<>();
        for (int visit = first; visit < first + STEP; visit++) {
            PatientCode patient = new PatientCode(String.format(Locale.ROOT, "P-%05d", visit / VISITS_OF_ONE));
            VisitRecord record = SERIES.get(visit % VISITS_OF_ONE);
            OffsetDateTime start = record.visit().startedAt();
            made.add(new WholeVisit(patient, start, record.journal()));
        }
        return made;
    }

    private static void use(Path file, int visits) throws Exception {
        median("open for writing", () -> {
            try (VisitStore store = VisitStore.open(file)) {
                return store.file();
            }
        });
        median("open for looking", () -> {
            try (VisitStore store = VisitStore.openReadOnly(file)) {
                return store.file();
            }
        });
        PatientCode patient = new PatientCode(String.format(Locale.ROOT, "P-%05d", visits / VISITS_OF_ONE / 2));
        try (VisitStore store = VisitStore.openReadOnly(file)) {
            median("list all patients", store::patients);
            median("list the 20 newest visits", () -> store.recent(20));
            median("report of one patient, text", () -> report(store, patient));
        }
    }

    private static int report(VisitStore store, PatientCode patient) throws Exception {
        Report report = Report.of(DemoCase.source(StoredVisits.of(store, patient)));
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        ReportWriters.standard().write(report, Format.TEXT, out);
        return out.size();
    }

    private static void median(String step, Callable<?> work) throws Exception {
        double[] times = new double[RUNS];
        for (int run = 0; run < RUNS; run++) {
            long begin = System.nanoTime();
            work.call();
            times[run] = (System.nanoTime() - begin) / 1e6;
        }
        Arrays.sort(times);
        System.out.printf(Locale.ROOT, "    %-30s %8.1f ms%n", step, times[RUNS / 2]);
    }
}
