package org.arcsay.report;

import java.io.ByteArrayOutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
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
 * [VISITS]}. Every patient has ten visits with the full series of both hands.
 *
 * <p>The first and the newest hundred visits are added through the store. Those between are copies of rows, made with SQL to save
 * time: as large as real ones, but their checksums do not fit, so nothing here reads them.
 */
public final class StoreBenchmark {
    private static final int VISITS_OF_ONE = 10;
    private static final int PATIENTS = 10;
    private static final int REAL = PATIENTS * VISITS_OF_ONE;
    private static final int FILLED_AT_ONCE = 10_000;
    private static final int RUNS = 5;
    private static final List<VisitRecord> SERIES = FullSeries.visits(VISITS_OF_ONE);

    private StoreBenchmark() {}

    public static void main(String[] args) throws Exception {
        Path folder = Files.createTempDirectory(Path.of(args[0]), "store-benchmark");
        int most = args.length > 1 ? Integer.parseInt(args[1]) : 100_000;
        oneByOne(folder.resolve("single.db"));
        grow(folder.resolve("growing.db"), most);
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

    private static void grow(Path file, int most) throws Exception {
        long readings = 0;
        for (int goal = 10 * REAL; goal <= most; goal *= 10) {
            long begin = System.nanoTime();
            if (goal == 10 * REAL) {
                readings += add(file, "A");
                double seconds = (System.nanoTime() - begin) / 1e9;
                System.out.printf(Locale.ROOT, "in one import: %.0f readings per second%n", readings / seconds);
            }
            fill(file, goal - REAL);
            add(file, "Z" + goal);
            System.out.printf(
                    Locale.ROOT,
                    "%d visits, %d readings, %.0f MB, made in %.0f s%n",
                    goal,
                    readings / REAL * goal,
                    Files.size(file) / 1e6,
                    (System.nanoTime() - begin) / 1e9);
            use(file);
        }
    }

    /** Adds visits through the store and returns the number of their readings. */
    private static long add(Path file, String code) throws Exception {
        List<WholeVisit> made = new ArrayList<>();
        for (int visit = 0; visit < REAL; visit++) {
            VisitRecord record = SERIES.get(visit % VISITS_OF_ONE);
            PatientCode patient = new PatientCode(code + "-" + visit / VISITS_OF_ONE);
            made.add(new WholeVisit(patient, record.visit().startedAt(), "", record.journal()));
        }
        try (VisitStore store = VisitStore.open(file)) {
            return store.addAll(made).stream()
                    .mapToLong(visit -> visit.counting().size())
                    .sum();
        }
    }

    private static void fill(Path file, int goal) throws SQLException {
        try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + file);
                Statement statement = connection.createStatement()) {
            long visits = number(statement, "SELECT max(id) FROM visit");
            while (visits < goal) {
                long copies = Math.min(goal - visits, FILLED_AT_ONCE) / REAL;
                fillOnce(statement, visits, copies);
                visits += copies * REAL;
            }
        }
    }

    private static void fillOnce(Statement statement, long visits, long copies) throws SQLException {
        long patients = number(statement, "SELECT max(id) FROM patient");
        long events = number(statement, "SELECT max(id) FROM event");
        long realEvents = number(statement, "SELECT max(id) FROM event WHERE visit = " + REAL);
        String copy =
                "WITH RECURSIVE copy(n) AS (SELECT 0 UNION ALL SELECT n + 1 FROM copy WHERE n + 1 < " + copies + ") ";
        String event = events + " + n * " + realEvents;
        String fromEvents = " FROM copy CROSS JOIN event WHERE visit <= " + REAL;
        statement.execute("BEGIN");
        statement.execute(
                copy + "INSERT INTO patient SELECT id + " + patients + " + n * " + PATIENTS + ", 'F-' || (id + "
                        + patients + " + n * " + PATIENTS + ") FROM copy CROSS JOIN patient WHERE id <= " + PATIENTS);
        statement.execute(
                copy + "INSERT INTO visit SELECT id + " + visits + " + n * " + REAL + ", patient + " + patients
                        + " + n * " + PATIENTS + ", started_at, plan FROM copy CROSS JOIN visit WHERE id <= " + REAL);
        statement.execute(copy + "INSERT INTO event SELECT id + " + event + ", visit + " + visits + " + n * " + REAL
                + ", number, kind, at, entry, by_whom, why" + fromEvents);
        for (String table : List.of("reading", "remark", "seal")) {
            statement.execute(copy + "INSERT INTO " + table + " SELECT event + " + event + ", "
                    + columns(statement, table) + " FROM copy CROSS JOIN " + table + " WHERE event <= " + realEvents);
        }
        statement.execute("COMMIT");
    }

    /** All columns but the first, which is the event. */
    private static String columns(Statement statement, String table) throws SQLException {
        try (ResultSet row =
                statement.executeQuery("SELECT group_concat('\"' || name || '\"', ', ') FROM pragma_table_info('"
                        + table + "') WHERE name <> 'event'")) {
            return row.getString(1);
        }
    }

    private static long number(Statement statement, String query) throws SQLException {
        try (ResultSet row = statement.executeQuery(query)) {
            return row.getLong(1);
        }
    }

    private static void use(Path file) throws Exception {
        median("open for writing", () -> {
            try (VisitStore store = VisitStore.open(file)) {
                return store.file();
            }
        });
        median("open until something can be stored", () -> {
            try (VisitStore store = VisitStore.open(file)) {
                return store.addAll(List.of());
            }
        });
        median("open for looking", () -> {
            try (VisitStore store = VisitStore.openReadOnly(file)) {
                return store.file();
            }
        });
        PatientCode patient = new PatientCode("A-5");
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
        System.out.printf(Locale.ROOT, "    %-35s %8.1f ms%n", step, times[RUNS / 2]);
    }
}
