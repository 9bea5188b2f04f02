package org.arcsay.cli;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.arcsay.app.Ears;
import org.arcsay.evaluate.Evaluation;
import org.arcsay.evaluate.EvaluationResult;
import org.arcsay.evaluate.EvaluationResult.Counts;
import org.arcsay.evaluate.Judged;
import org.arcsay.evaluate.Verdict;
import org.arcsay.grammar.SpokenGrammar;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Parameters;

/** Measures how well a folder of recordings is understood. */
@Command(
        name = "evaluate",
        mixinStandardHelpOptions = true,
        description =
                "Runs recordings through the whole line and counts right, wrong, refused and asked readings. The folder"
                        + " holds clips.tsv with a heading: file, words, and where wanted voice, noise, distance, mode, joint, motion,"
                        + " value, unit; '-' for what is not said.")
final class EvaluateCommand implements Callable<Integer> {
    @Mixin
    private Place place;

    @Parameters(paramLabel = "FOLDER", description = "Folder with clips.tsv and the recordings.")
    private Path folder;

    @Mixin
    private ModelOption model;

    record View(
            String format,
            String model,
            String grammar,
            Counts total,
            Map<String, Counts> byVoice,
            Map<String, Counts> byNoise,
            Map<String, Counts> byDistance,
            Map<String, Integer> confusions,
            double realTimeFactor,
            double audioSeconds,
            double readySeconds,
            Optional<Long> peakMemoryMb,
            List<Judged> recordings) {}

    @Override
    public Integer call() throws Exception {
        SpokenGrammar grammar = place.grammar();
        long start = System.nanoTime();
        try (Ears ears = Ears.open(place.folder().models(), model.folder(), grammar)) {
            double ready = (System.nanoTime() - start) / 1e9;
            ears.warning().ifPresent(place.err()::println);
            EvaluationResult result = new Evaluation(grammar, ears).run(folder);
            View view = new View(
                    "arcsay.evaluation/1",
                    ears.version(),
                    grammar.version(),
                    result.total(),
                    result.by("voice"),
                    result.by("noise"),
                    result.by("distance"),
                    result.confusions(),
                    result.realTimeFactor(),
                    result.audio().toMillis() / 1000.0,
                    ready,
                    peakMemoryMb(),
                    result.recordings());
            print(view);
        }
        return ExitCode.OK;
    }

    private void print(View view) {
        if (place.json()) {
            place.out().println(Json.text(view));
            return;
        }
        PrintWriter out = place.out();
        out.println("model " + view.model() + ", grammar " + view.grammar());
        out.println(String.format(
                Locale.ROOT,
                "%-28s %6s %6s %6s %8s %6s %13s",
                "",
                "all",
                "right",
                "wrong",
                "refused",
                "asked",
                "word errors"));
        row("all", view.total(), out);
        view.byVoice().forEach((voice, counts) -> row("voice " + voice, counts, out));
        view.byNoise().forEach((noise, counts) -> row("noise " + noise, counts, out));
        view.byDistance().forEach((distance, counts) -> row("distance " + distance, counts, out));
        out.println("numbers taken for others: " + (view.confusions().isEmpty() ? "none" : view.confusions()));
        for (Judged one : view.recordings()) {
            if (one.verdict() != Verdict.RIGHT) {
                out.println(one.verdict().name().toLowerCase(Locale.ROOT) + " " + one.file() + ": said \"" + one.said()
                        + "\", heard \"" + one.heard() + "\"");
            }
        }
        out.println(String.format(
                Locale.ROOT,
                "%.1f s of sound, real-time factor %.3f, model ready in %.2f s%s",
                view.audioSeconds(),
                view.realTimeFactor(),
                view.readySeconds(),
                view.peakMemoryMb().map(mb -> ", peak memory " + mb + " MB").orElse("")));
    }

    private static void row(String name, Counts counts, PrintWriter out) {
        out.println(String.format(
                Locale.ROOT,
                "%-28s %6d %6d %6d %8d %6d %8d (%.1f %%)",
                name,
                counts.recordings(),
                counts.right(),
                counts.wrong(),
                counts.refused(),
                counts.asked(),
                counts.wordErrors(),
                counts.words() == 0 ? 0 : 100.0 * counts.wordErrors() / counts.words()));
    }

    /** Peak resident memory of this process, where the system tells it (Linux). */
    private static Optional<Long> peakMemoryMb() {
        try {
            return Files.readAllLines(Path.of("/proc/self/status")).stream()
                    .filter(line -> line.startsWith("VmHWM:"))
                    .map(line -> Long.parseLong(line.replaceAll("\\D", "")) / 1024)
                    .findFirst();
        } catch (IOException e) {
            return Optional.empty();
        }
    }
}
