package org.arcsay.docs;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.arcsay.tables.Provenance;
import org.arcsay.tables.Row;
import org.arcsay.tables.Table;
import org.junit.jupiter.api.Test;

/** Every number says where it comes from, and every one that nobody has seen in a source is listed. */
class NumberMarksTest {
    private static final Path TABLES = Path.of("src", "main", "resources", "org", "arcsay", "tables");
    /** Names and groups of joints; no number. */
    private static final String SITES = "sites.tsv";

    private static final Pattern NUMBER =
            Pattern.compile("(?<![\\w.\"-])(?:\\d+\\.\\d+|\\d{2,}|[3-9])(?![\\w.%-])|\"\\d+(?:\\.\\d+)?\"");

    private static List<Table> tables() throws IOException {
        try (Stream<Path> files = Files.list(TABLES)) {
            return files.map(file -> file.getFileName().toString())
                    .filter(name -> name.endsWith(".tsv") && !name.equals(SITES))
                    .sorted()
                    .map(Table::shipped)
                    .toList();
        }
    }

    @Test
    void everyLineOfEveryTableHasAMarkAndASource() throws IOException {
        List<Table> tables = tables();
        assertTrue(tables.size() >= 9, "tables: " + tables.size());
        for (Table table : tables) {
            List<Provenance> provenances = table.map(Row::provenance);
            assertTrue(!provenances.isEmpty(), table.name());
            provenances.forEach(provenance -> assertTrue(
                    provenance.source().strip().length() >= 5, table.name() + ": '" + provenance.source() + "'"));
        }
    }

    @Test
    void everyLineWithoutASourceThatWasSeenIsListed() throws IOException {
        String page = Files.readString(Path.of("docs", "numbers.md"));
        List<String> missing = new ArrayList<>();
        for (Table table : tables()) {
            table.map(Row::provenance).stream()
                    .filter(provenance -> !provenance.mark().citable())
                    .filter(provenance -> !section(page, provenance).contains("| " + provenance.source() + " |"))
                    .map(provenance -> table.name() + ": " + provenance.words())
                    .forEach(missing::add);
        }
        assertEquals(List.of(), missing);
    }

    private static String section(String page, Provenance provenance) {
        String words = provenance.mark().words();
        String title = "\n## " + Character.toUpperCase(words.charAt(0)) + words.substring(1) + "\n";
        int start = page.indexOf(title);
        int end = page.indexOf("\n## ", start + title.length());
        return start < 0 ? "" : page.substring(start, end < 0 ? page.length() : end);
    }

    /** A number that judging or computing rests on stands in a table; the few in code are listed in docs/computation.md. */
    @Test
    void numbersInCodeAreThoseThatTheDocumentationLists() throws IOException {
        Set<String> found = new TreeSet<>();
        for (String name : List.of("validate", "analysis")) {
            try (Stream<Path> files = Files.list(Path.of("src", "main", "java", "org", "arcsay", name))) {
                for (Path file : files.sorted().collect(Collectors.toList())) {
                    numbers(file).forEach(number -> found.add(file.getFileName() + " " + number));
                }
            }
        }
        assertEquals(KNOWN, found);
    }

    private static List<String> numbers(Path file) throws IOException {
        return Files.readAllLines(file).stream()
                .map(String::strip)
                .filter(line -> !line.startsWith("*") && !line.startsWith("/") && !line.startsWith("import"))
                .map(line -> line.replaceAll("\"(?!\\d+(?:\\.\\d+)?\")(?:[^\"\\\\]|\\\\.)*\"", ""))
                .flatMap(line -> NUMBER.matcher(line).results())
                .map(MatchResult::group)
                .toList();
    }

    /** Judging rests on the two of Statistics; the others count cells and digits, or are the arithmetic of spoken numbers. */
    private static final Set<String> KNOWN = new TreeSet<>(List.of(
            "Amount.java \"1\"",
            "Notation.java 3",
            "Percent.java 100",
            "PlainWords.java 3",
            "PlainWords.java 4",
            "SeriesPlan.java 10",
            "SoundAlikes.java 10",
            "SoundAlikes.java 13",
            "SoundAlikes.java 19",
            "SoundAlikes.java 30",
            "SoundAlikes.java 90",
            "SoundAlikes.java 99",
            "Statistics.java \"1.645\"",
            "Statistics.java \"1.96\"",
            "Tenfold.java 999",
            "Validator.java 4"));
}
