package org.arcsay.recogniser;

import com.sun.management.OperatingSystemMXBean;
import java.io.IOException;
import java.lang.management.ManagementFactory;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.arcsay.audio.AudioException;
import org.arcsay.audio.WavSource;
import org.arcsay.grammar.Lexicon;
import org.arcsay.grammar.SpokenGrammar;
import org.arcsay.store.DataFolder;

/**
 * Measures the recogniser in a process of its own; for one thread. Not a test: what it prints goes into models/README.md.
 * Arguments: a WAV file and how often to hear it in a row.
 */
final class RecogniserBenchmark {
    private RecogniserBenchmark() {}

    public static void main(String[] arguments) throws Exception {
        Path wav = Path.of(arguments[0]);
        int rounds = Integer.parseInt(arguments[1]);
        long begin = cpuNanos();
        ModelCache cache = new ModelCache(DataFolder.resolve(Optional.empty()).models());
        ModelFolder bundled = cache.bundled();
        long unpacked = cpuNanos();
        ModelFolder fitted = cache.fit(bundled, SpokenGrammar.standard().graph(), Lexicon.EMPTY)
                .folder();
        long compiled = cpuNanos();
        try (VoskModel model = VoskModel.load(fitted.path());
                Recogniser recogniser = model.recogniser(rate(wav))) {
            long ready = cpuNanos();
            System.out.printf(
                    Locale.ROOT,
                    "since the process began %.2f s; model checked in %.2f s, grammar fitted in %.2f s, loaded in %.2f s%n",
                    (System.currentTimeMillis()
                                    - ManagementFactory.getRuntimeMXBean().getStartTime())
                            / 1000.0,
                    (unpacked - begin) / 1e9,
                    (compiled - unpacked) / 1e9,
                    (ready - compiled) / 1e9);
            hear(recogniser, wav, rounds);
        }
    }

    /** Of all threads of the process. */
    private static long cpuNanos() {
        return ((OperatingSystemMXBean) ManagementFactory.getOperatingSystemMXBean()).getProcessCpuTime();
    }

    private static int rate(Path wav) throws AudioException {
        try (WavSource source = WavSource.open(wav)) {
            return source.sampleRate();
        }
    }

    private static void hear(Recogniser recogniser, Path wav, int rounds) throws AudioException, IOException {
        Duration heard = Duration.ZERO;
        int utterances = 0;
        long cpu = ManagementFactory.getThreadMXBean().getCurrentThreadCpuTime();
        for (int round = 1; round <= rounds; round++) {
            try (WavSource source = WavSource.open(wav)) {
                utterances += Recordings.hear(recogniser, source).size();
                heard = heard.plus(source.position());
            }
            if (round == 1 || round % 10 == 0 || round == rounds) {
                double load = (ManagementFactory.getThreadMXBean().getCurrentThreadCpuTime() - cpu) / 1e9;
                System.out.printf(
                        Locale.ROOT,
                        "%4d min heard, %d utterances, processor time per second of sound %.3f, memory %s%n",
                        heard.toMinutes(),
                        utterances,
                        load / heard.toMillis() * 1000,
                        memory());
            }
        }
    }

    private static List<String> memory() throws IOException {
        Path status = Path.of("/proc/self/status");
        return Files.exists(status)
                ? Files.readAllLines(status).stream()
                        .filter(line -> line.startsWith("VmRSS") || line.startsWith("VmHWM"))
                        .map(line -> line.replaceAll("\\s+", " "))
                        .toList()
                : List.of("known on Linux only");
    }
}
