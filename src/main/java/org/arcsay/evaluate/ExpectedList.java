package org.arcsay.evaluate;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.arcsay.evaluate.Expected.Fields;

/** Reads {@code clips.tsv}, the list of recordings in a folder with what is said in each. */
final class ExpectedList {
    static final String FILE = "clips.tsv";

    private static final List<String> GROUPS = List.of("voice", "noise", "distance");

    private ExpectedList() {}

    /**
     * @throws EvaluationException naming the line that cannot be used
     */
    static List<Expected> read(Path folder) throws EvaluationException {
        Path list = folder.resolve(FILE);
        List<String> lines = lines(list);
        List<String> header = List.of(lines.get(0).split("\t"));
        if (!header.contains("file") || !header.contains("words")) {
            throw new EvaluationException(list + ", line 1: needs at least the columns file and words");
        }
        List<Expected> recordings = new ArrayList<>();
        for (int i = 1; i < lines.size(); i++) {
            if (!lines.get(i).isBlank()) {
                recordings.add(recording(folder, header, lines.get(i), list + ", line " + (i + 1)));
            }
        }
        return recordings;
    }

    private static List<String> lines(Path list) throws EvaluationException {
        try {
            List<String> lines = Files.readAllLines(list, StandardCharsets.UTF_8);
            if (lines.isEmpty()) {
                throw new EvaluationException(list + " is empty");
            }
            return lines;
        } catch (IOException e) {
            throw new EvaluationException("There is no readable " + list
                    + ". It lists the recordings, one a line, with what is said in each.");
        }
    }

    private static Expected recording(Path folder, List<String> header, String line, String where)
            throws EvaluationException {
        String[] cells = line.split("\t", -1);
        if (cells.length != header.size()) {
            throw new EvaluationException(
                    where + ": has " + cells.length + " columns where the heading has " + header.size());
        }
        Map<String, String> row = new LinkedHashMap<>();
        for (int i = 0; i < cells.length; i++) {
            row.put(header.get(i), cells[i].strip());
        }
        Map<String, String> groups = new LinkedHashMap<>();
        GROUPS.stream().filter(row::containsKey).forEach(group -> groups.put(group, row.get(group)));
        Fields fields = new Fields(
                row.getOrDefault("mode", "-"),
                row.getOrDefault("joint", "-"),
                row.getOrDefault("motion", "-"),
                row.getOrDefault("value", "-"),
                row.getOrDefault("unit", "-"));
        return new Expected(
                folder.resolve(row.getOrDefault("file", "")),
                List.of(row.getOrDefault("words", "").split(" ")),
                fields,
                groups);
    }
}
