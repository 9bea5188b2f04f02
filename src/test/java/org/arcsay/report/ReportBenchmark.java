package org.arcsay.report;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.lang.management.ManagementFactory;
import java.lang.management.ThreadMXBean;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.Callable;
import org.arcsay.report.content.DemoCase;
import org.arcsay.report.content.FullSeries;
import org.arcsay.report.content.Report;
import org.arcsay.report.content.VisitRecord;
import org.arcsay.report.csv.CsvImport;
import org.arcsay.report.csv.CsvReader;
import org.arcsay.report.csv.ImportedVisit;
import org.arcsay.store.VisitStore;
import org.arcsay.store.WholeVisit;

/**
 * Time and size of every format for a patient with many visits: {@code ReportBenchmark [VISITS]}. The first run of each step
 * counts what a single command sees; the median of seven more what a window sees that stays open.
 */
public final class ReportBenchmark {
    private static final int RUNS = 7;

    private ReportBenchmark() {}

    public static void main(String[] args) throws Exception {
        int visits = args.length == 0 ? 200 : Integer.parseInt(args[0]);
        Path folder = Files.createTempDirectory("arcsay-benchmark");
        Path database = folder.resolve("records.db");
        List<WholeVisit> whole =
                FullSeries.visits(visits).stream().map(ReportBenchmark::whole).toList();
        long readings = whole.stream()
                .mapToLong(visit -> visit.visit(1).counting().size())
                .sum();
        System.out.printf(Locale.ROOT, "%d visits, %d readings%n", visits, readings);
        try (VisitStore store = VisitStore.open(database)) {
            once("add all visits to an empty records file", () -> store.addAll(whole));
            measure(store, whole.get(0));
        }
        System.out.printf(Locale.ROOT, "records file: %d kB%n", Files.size(database) / 1000);
        System.gc();
        Runtime runtime = Runtime.getRuntime();
        System.out.printf(
                Locale.ROOT,
                "heap in use after all: %d MB%n",
                (runtime.totalMemory() - runtime.freeMemory()) / 1_000_000);
    }

    private static void measure(VisitStore store, WholeVisit any) throws Exception {
        List<VisitRecord> stored = repeat("read them", () -> StoredVisits.of(store, any.patient()));
        Report report = repeat("compute the report", () -> Report.of(DemoCase.source(stored)));
        for (Format format : Format.values()) {
            byte[] bytes = repeat("write " + format.code(), () -> write(report, format));
            System.out.printf(Locale.ROOT, "    %d bytes%n", bytes.length);
        }
        byte[] csv = write(report, Format.CSV);
        CsvImport read = repeat("read csv back", () -> CsvReader.read(new ByteArrayInputStream(csv)));
        List<ImportedVisit> imported = ((CsvImport.Ready) read).visits();
        System.out.println("    the same visits: "
                + imported.stream()
                        .map(ImportedVisit::visit)
                        .toList()
                        .equals(stored.stream().map(VisitRecord::visit).toList()));
    }

    private static byte[] write(Report report, Format format) throws Exception {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        ReportWriters.standard().write(report, format, out);
        return out.toByteArray();
    }

    private static WholeVisit whole(VisitRecord record) {
        return new WholeVisit(record.visit().patient(), record.visit().startedAt(), record.plan(), record.journal());
    }

    private static <T> T once(String step, Callable<T> work) throws Exception {
        Clock clock = new Clock();
        T result = work.call();
        System.out.printf(Locale.ROOT, "%-42s %s%n", step, clock.read());
        return result;
    }

    private static <T> T repeat(String step, Callable<T> work) throws Exception {
        T result = once(step, work);
        double[] later = new double[RUNS];
        for (int run = 0; run < RUNS; run++) {
            Clock clock = new Clock();
            work.call();
            later[run] = clock.processor();
        }
        Arrays.sort(later);
        System.out.printf(Locale.ROOT, "    then %.1f ms of processor time%n", later[RUNS / 2]);
        return result;
    }

    /** Time by the clock on the wall, and time that this thread really had: they differ on a busy machine. */
    private static final class Clock {
        private static final ThreadMXBean THREADS = ManagementFactory.getThreadMXBean();

        private final long wall = System.nanoTime();
        private final long processor = THREADS.getCurrentThreadCpuTime();

        double processor() {
            return (THREADS.getCurrentThreadCpuTime() - processor) / 1e6;
        }

        String read() {
            double had = processor();
            return String.format(
                    Locale.ROOT, "%7.0f ms, of it processor time %7.0f ms", (System.nanoTime() - wall) / 1e6, had);
        }
    }
}
