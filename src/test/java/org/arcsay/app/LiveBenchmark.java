package org.arcsay.app;

import java.io.IOException;
import java.io.PrintStream;
import java.lang.ref.Reference;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import java.util.concurrent.atomic.AtomicLong;
import org.arcsay.audio.AudioException;
import org.arcsay.audio.AudioSource;
import org.arcsay.audio.SimulatedMicrophone;
import org.arcsay.audio.WavSource;
import org.arcsay.feedback.Answer;
import org.arcsay.feedback.NoSpeaker;
import org.arcsay.feedback.Speaker;
import org.arcsay.recogniser.SentencePause;
import org.arcsay.session.Journal;

/**
 * Measures live capture; run by hand.
 *
 * <p>{@code latency [SPEED [PAUSE]]} plays the script, in real time unless a speed is given, and prints, for each answer, the silence after the last word until the
 * utterance is ended, and our own work from the block that ended it to the stored entry and to the first sample of the answer.
 * {@code memory MINUTES} plays the script over and over as fast as it is computed and prints heap and resident memory.
 */
public final class LiveBenchmark {
    private static final PrintStream OUT = System.out;
    private static final int RATE = 16_000;
    private static final Duration LEAD = Duration.ofSeconds(2);
    private static final Duration GAP = Duration.ofSeconds(4);

    private LiveBenchmark() {}

    public static void main(String[] args) throws Exception {
        Path folder = Files.createTempDirectory("arcsay-live");
        if (args[0].equals("latency")) {
            double speed = args.length > 1 ? Double.parseDouble(args[1]) : 1;
            SentencePause pause = args.length > 2 ? SentencePause.valueOf(args[2]) : SentencePause.usual();
            latency(folder, speed, pause);
        } else {
            memory(folder, Integer.parseInt(args[1]));
        }
    }

    // ---- latency ----

    private static void latency(Path folder, double speed, SentencePause pause) throws Exception {
        SimulatedMicrophone script = new SimulatedMicrophone().speed(speed).pause(LEAD);
        List<Long> ends = new ArrayList<>();
        long at = LEAD.toMillis() * RATE / 1000;
        for (Rehearsal.Line line : Rehearsal.script()) {
            at += samples(line.wav());
            ends.add(at);
            at += GAP.toMillis() * RATE / 1000;
            script.play(line.wav()).pause(GAP);
        }
        try (Rehearsal rehearsal = new Rehearsal(folder, pause)) {
            Probe probe = new Probe(new Room(script.open(), 0.1));
            Journal journal = rehearsal.journal();
            rehearsal.run(
                    probe,
                    probe.speaker(),
                    event -> {
                        journal.append(event);
                        probe.committed = System.nanoTime();
                    },
                    (utterance, command, outcome) -> {});
            probe.print(ends);
            OUT.println(rehearsal.stored().size() + " readings count: " + rehearsal.stored());
        }
    }

    private static long samples(Path wav) throws AudioException {
        try (WavSource source = WavSource.open(wav)) {
            short[] buffer = new short[RATE];
            long count = 0;
            for (int n = source.read(buffer); n >= 0; n = source.read(buffer)) {
                count += n;
            }
            return count;
        }
    }

    /** Notes when sound arrived, when an entry was stored and when an answer was ready. Used by the thread that recognises. */
    private static final class Probe implements AudioSource {
        private final Room room;
        private final List<double[]> rows = new ArrayList<>();
        private long arrived;
        private long committed;

        Probe(Room room) {
            this.room = room;
        }

        @Override
        public int sampleRate() {
            return room.sampleRate();
        }

        @Override
        public int read(short[] buffer) throws AudioException {
            int length = room.read(buffer);
            arrived = System.nanoTime();
            return length;
        }

        @Override
        public Duration position() {
            return room.position();
        }

        @Override
        public void close() {
            room.close();
        }

        Speaker speaker() {
            Speaker inner = room.speaker();
            return new Speaker() {
                @Override
                public void answer(Answer answer) {
                    long block = arrived;
                    inner.answer(answer);
                    double own = (System.nanoTime() - block) / 1e6;
                    double stored = committed > block ? (committed - block) / 1e6 : Double.NaN;
                    rows.add(new double[] {room.heard(), stored, own});
                }

                @Override
                public void stop() {
                    inner.stop();
                }

                @Override
                public boolean sounding() {
                    return inner.sounding();
                }

                @Override
                public void close() {
                    inner.close();
                }
            };
        }

        void print(List<Long> ends) {
            List<Double> silences = new ArrayList<>();
            List<Double> storing = new ArrayList<>();
            List<Double> own = new ArrayList<>();
            List<Double> total = new ArrayList<>();
            for (double[] row : rows.subList(1, rows.size())) {
                long end = ends.stream()
                        .filter(e -> e <= row[0])
                        .reduce((a, b) -> b)
                        .orElseThrow();
                double silence = (row[0] - end) * 1000 / RATE;
                silences.add(silence);
                own.add(row[2]);
                total.add(silence + row[2]);
                if (!Double.isNaN(row[1])) {
                    storing.add(row[1]);
                }
            }
            OUT.printf("%d answers%n", total.size());
            line("silence after the last word", silences);
            line("own work until stored", storing);
            line("own work until first sample", own);
            line("last word to first sample", total);
        }

        private static void line(String what, List<Double> values) {
            double[] sorted =
                    values.stream().mapToDouble(Double::doubleValue).sorted().toArray();
            OUT.printf(
                    Locale.ROOT,
                    "%-30s n %2d  median %6.1f  95th percentile %6.1f  max %6.1f ms%n",
                    what,
                    sorted.length,
                    sorted[sorted.length / 2],
                    sorted[(int) Math.ceil(sorted.length * 0.95) - 1],
                    sorted[sorted.length - 1]);
        }
    }

    // ---- memory ----

    private static void memory(Path folder, int minutes) throws Exception {
        List<Rehearsal.Line> lines = Rehearsal.script();
        SimulatedMicrophone script =
                new SimulatedMicrophone().speed(Double.POSITIVE_INFINITY).pause(LEAD);
        double seconds = LEAD.toSeconds();
        int said = 0;
        while (seconds < minutes * 60.0) {
            Rehearsal.Line line = lines.get(1 + said++ % (lines.size() - 2));
            script.play(line.wav()).pause(GAP);
            seconds += samples(line.wav()) / (double) RATE + GAP.toSeconds();
        }
        AtomicLong next = new AtomicLong();
        AtomicLong utterances = new AtomicLong();
        Map<String, Integer> outcomes = new TreeMap<>();
        try (Rehearsal rehearsal = new Rehearsal(folder);
                AudioSource source = script.open()) {
            OUT.printf("%d utterances are said%n", said);
            long began = System.nanoTime();
            rehearsal.run(source, new NoSpeaker(), new CaptureListener() {
                @Override
                public void answered(
                        org.arcsay.model.Utterance heard,
                        org.arcsay.parser.Command command,
                        org.arcsay.session.Outcome outcome) {
                    utterances.incrementAndGet();
                    outcomes.merge(outcome.getClass().getSimpleName(), 1, Integer::sum);
                }

                @Override
                public void progress(Duration position) {
                    if (position.toMinutes() >= next.get()) {
                        next.addAndGet(5);
                        OUT.println(position.toMinutes() + " min: " + memoryNow());
                    }
                }
            });
            OUT.printf(
                    Locale.ROOT,
                    "%d utterances heard in %.0f s, outcomes %s, %d readings count%n",
                    utterances.get(),
                    (System.nanoTime() - began) / 1e9,
                    outcomes,
                    rehearsal.stored().size());
            Reference.reachabilityFence(rehearsal);
        }
    }

    private static String memoryNow() {
        System.gc();
        Runtime runtime = Runtime.getRuntime();
        long heap = (runtime.totalMemory() - runtime.freeMemory()) >> 10;
        return "heap " + heap + " KiB, resident " + resident();
    }

    private static String resident() {
        try {
            return Files.readAllLines(Path.of("/proc/self/status")).stream()
                    .filter(line -> line.startsWith("VmRSS"))
                    .map(line -> line.replaceAll("\\s+", " ").substring("VmRSS: ".length()))
                    .findFirst()
                    .orElse("unknown");
        } catch (IOException e) {
            return "unknown";
        }
    }
}
