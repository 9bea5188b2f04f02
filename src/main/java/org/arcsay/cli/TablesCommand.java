package org.arcsay.cli;

import java.math.BigDecimal;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.concurrent.Callable;
import org.arcsay.analysis.MeasurementError;
import org.arcsay.app.Settings;
import org.arcsay.tables.Table;
import org.arcsay.tables.TableException;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Parameters;

/** Prints the tables of numbers that computing and judging rest on. */
@Command(
        name = "tables",
        mixinStandardHelpOptions = true,
        description =
                "Prints a table of numbers with the source of every line: measurement error, norm sets, limits and the rest.",
        footer = {
            "",
            "The clinic's own figures: print a table into a file, change it, and name the file in the settings as",
            "measurement-error or norm-file. A line of the clinic's own comes before every built-in one.",
            "With --json, measurement-error gives SEM, MDC90 and MDC95 of every line that is in force.",
        })
final class TablesCommand implements Callable<Integer> {
    private static final Map<String, String> KNOWN = new TreeMap<>(Map.of(
            "measurement-error", "how far two readings may differ by measurement alone (setting: measurement-error)",
            "norms", "norm sets (settings: norms, norm-file)",
            "limits", "largest plausible values",
            "side-differences", "usual differences between the hands",
            "thresholds", "single numbers of the rules",
            "totals", "how totals are made up",
            "grades", "grade bands",
            "opposition", "targets of opposition",
            "opposition-score", "stages of the opposition score",
            "plans", "series"));

    @Mixin
    private Place place;

    @Parameters(
            arity = "0..1",
            paramLabel = "TABLE",
            description = "Name of a table; without one the tables are named.")
    private @Nullable String table;

    /** A line of the table of measurement error, computed. */
    record Figure(
            String measure,
            String mode,
            String rater,
            BigDecimal sem,
            BigDecimal mdc90,
            BigDecimal mdc95,
            String unit,
            String source,
            String known) {
        static Figure of(MeasurementError.Line line) {
            return new Figure(
                    line.pattern().site() + ":" + line.pattern().motion(),
                    line.pattern().mode().map(mode -> mode.word()).orElse("any"),
                    line.figure().rater().words(),
                    line.figure().sem(),
                    line.figure().mdc90(),
                    line.figure().mdc95(),
                    line.figure().scale().unit(),
                    line.figure().provenance().source(),
                    line.figure().provenance().mark().words());
        }
    }

    /** For other programs. */
    record Figures(String format, String table, List<Figure> lines) {}

    @Override
    public Integer call() throws Exception {
        Settings settings = place.settings();
        MeasurementError error = settings.habits().customs().yardstick().error();
        if (table == null) {
            place.print(KNOWN, names(error));
            return ExitCode.OK;
        }
        if (!KNOWN.containsKey(table)) {
            throw new CliException(
                    ExitCode.USAGE,
                    "There is no table '" + table + "'. Known are " + String.join(", ", KNOWN.keySet()) + ".");
        }
        try {
            String text = Table.shipped(table + ".tsv").text();
            place.print(
                    table.equals("measurement-error")
                            ? new Figures(
                                    "arcsay.figures/1",
                                    error.isOwn() ? error.name() : "built-in",
                                    error.lines().stream().map(Figure::of).toList())
                            : Map.of("table", table, "text", text),
                    text.stripTrailing());
        } catch (TableException e) {
            throw new CliException(ExitCode.SETTINGS, String.valueOf(e.getMessage()));
        }
        return ExitCode.OK;
    }

    private static String names(MeasurementError error) {
        StringBuilder names = new StringBuilder();
        KNOWN.forEach((name, meaning) -> names.append("%-18s %s%n".formatted(name, meaning)));
        names.append(
                error.isOwn()
                        ? "Measurement error in force: " + error.name() + ", then the built-in table."
                        : "Measurement error in force: the built-in table.");
        return names.toString();
    }
}
