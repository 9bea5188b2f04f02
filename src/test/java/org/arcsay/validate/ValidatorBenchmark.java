package org.arcsay.validate;

import java.util.List;
import java.util.Map;
import java.util.concurrent.TimeUnit;
import org.arcsay.model.Entry;
import org.arcsay.model.Finding;
import org.arcsay.model.Visit;
import org.arcsay.report.content.FullSeries;
import org.arcsay.report.content.VisitRecord;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Param;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;

/** For one thread. All rules on the last reading, and on every reading, of a full series of both hands. */
@State(Scope.Thread)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MICROSECONDS)
@Warmup(iterations = 3, time = 1)
@Measurement(iterations = 5, time = 1)
@Fork(1)
public class ValidatorBenchmark {
    private final Validator validator = Validator.standard();

    @Param({"0", "10", "100"})
    public int earlierVisits;

    private Visit visit;
    private History history;

    @Setup
    public void measure() {
        List<Visit> visits = FullSeries.visits(earlierVisits + 1).stream()
                .map(VisitRecord::visit)
                .toList();
        visit = visits.get(earlierVisits);
        history = History.of(visits.subList(0, earlierVisits));
    }

    @Benchmark
    public List<Finding> judgeOne() {
        List<Entry> entries = visit.counting();
        return validator.judgeEntry(entries.get(entries.size() - 1), visit, history);
    }

    @Benchmark
    public Map<Integer, List<Finding>> judgeAll() {
        return validator.judgeAll(visit, history);
    }
}
