package org.arcsay.app;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.arcsay.analysis.SeriesPlan;
import org.arcsay.analysis.SeriesPlans;
import org.arcsay.grammar.SpokenGrammar;
import org.arcsay.model.Mode;
import org.arcsay.parser.Command;
import org.arcsay.parser.Parser;

/**
 * A clinic's own series, from a text file; for one thread.
 *
 * <p>A line {@code series tendon: After tendon repair} begins one with its short name and title; each line after it is a measure
 * as it is said, such as {@code passive IP flexion} or {@code opposition index}, with {@code optional} before it where the series
 * is complete without it. Comments begin with {@code #}.
 */
public final class PlanFile {
    private static final Pattern HEAD = Pattern.compile("series\\s+([a-z0-9][a-z0-9-]*)\\s*:\\s*(\\S.*)");
    private static final Pattern MEASURE = Pattern.compile("(optional\\s+)?(.+)");

    private final Path file;
    private final Parser parser;
    private final List<SeriesPlan> plans = new ArrayList<>();
    private String id = "";
    private String title = "";
    private List<SeriesPlan.Step> steps = new ArrayList<>();

    private PlanFile(Path file, SpokenGrammar grammar) {
        this.file = file;
        this.parser = new Parser(grammar);
    }

    /** The file cannot be used; the message names the line and says what is allowed. */
    public static final class PlanException extends Exception {
        private static final long serialVersionUID = 1L;

        PlanException(String message) {
            super(message);
        }
    }

    /**
     * Reads a file.
     *
     * @param grammar says what can be measured
     * @return at least one series, in the order of the file
     * @throws PlanException naming the line
     */
    public static List<SeriesPlan> read(Path file, SpokenGrammar grammar) throws PlanException {
        List<String> lines;
        try {
            lines = Files.readAllLines(file);
        } catch (IOException e) {
            throw new PlanException("The file with series " + file + " cannot be read as text (" + e.getMessage()
                    + "). Give the path of a text file in UTF-8.");
        }
        PlanFile reading = new PlanFile(file, grammar);
        for (int i = 0; i < lines.size(); i++) {
            reading.line(i + 1, lines.get(i).replaceFirst("(^|\\s)#.*", "").strip());
        }
        reading.finish(lines.size());
        return List.copyOf(reading.plans);
    }

    private void line(int number, String text) throws PlanException {
        Matcher head = HEAD.matcher(text);
        if (text.isEmpty()) {
            return;
        }
        if (head.matches()) {
            begin(number, head.group(1), head.group(2));
        } else if (text.startsWith("series")) {
            throw wrong(
                    number, "'" + text + "' should be 'series NAME: TITLE', the name in small letters, digits and '-'");
        } else if (id.isEmpty()) {
            throw wrong(number, "the first line must name a series, such as 'series tendon: After tendon repair'");
        } else {
            steps.add(step(number, text));
        }
    }

    private void begin(int number, String name, String words) throws PlanException {
        if (!id.isEmpty()) {
            finish(number);
        }
        boolean taken = SeriesPlans.standard().named(name).isPresent()
                || name.equals(SeriesPlan.RECHECK.id())
                || plans.stream().anyMatch(plan -> plan.id().equals(name));
        if (taken) {
            throw wrong(number, "there is a series '" + name + "' already; choose another name");
        }
        id = name;
        title = words;
        steps = new ArrayList<>();
    }

    private SeriesPlan.Step step(int number, String text) throws PlanException {
        Matcher measure = MEASURE.matcher(text);
        if (measure.matches()
                && parser.parse(TypedSpeech.words(measure.group(2))) instanceof Command.Named named
                && named.who().side().isEmpty()) {
            return new SeriesPlan.Step(
                    named.measure(), named.who().mode().orElse(Mode.ACTIVE), measure.group(1) != null);
        }
        throw wrong(
                number,
                "'" + text + "' is no measure; write it as it is said, without hand and number, such as 'IP flexion',"
                        + " 'passive MP extension', 'radial abduction' or 'opposition index'");
    }

    private void finish(int number) throws PlanException {
        if (id.isEmpty()) {
            throw wrong(number, "no series; begin one with 'series NAME: TITLE'");
        }
        if (steps.isEmpty()) {
            throw wrong(number, "the series '" + id + "' has no measure; write at least one below its name");
        }
        long different = steps.stream()
                .map(step -> step.measure() + " " + step.mode())
                .distinct()
                .count();
        if (different < steps.size()) {
            throw wrong(number, "the series '" + id + "' ends here and names a measure twice; name each once");
        }
        plans.add(SeriesPlan.own(id, title, steps, String.valueOf(file.getFileName())));
    }

    private PlanException wrong(int number, String what) {
        return new PlanException(file + ", line " + number + ": " + what);
    }
}
