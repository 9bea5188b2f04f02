package org.arcsay.parser;

import java.util.List;
import java.util.concurrent.TimeUnit;
import org.arcsay.grammar.SpokenGrammar;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Param;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;

/** For one thread. From words to a command, and from the grammar file to a parser. */
@State(Scope.Thread)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MICROSECONDS)
@Warmup(iterations = 3, time = 1)
@Measurement(iterations = 5, time = 1)
@Fork(1)
public class ParserBenchmark {
    private final Parser parser = new Parser(SpokenGrammar.standard());

    @Param({
        "i p flexion seventy five",
        "right thumb m c p active extension lag ten degrees",
        "so how was your weekend then"
    })
    public String words = "";

    @Benchmark
    public Command parse() {
        return parser.parse(List.of(words.split(" ")));
    }
}
