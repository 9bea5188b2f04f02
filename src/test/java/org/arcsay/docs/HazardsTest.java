package org.arcsay.docs;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;

class HazardsTest {
    private static final Path PAGE = Path.of("docs", "hazards.md");
    private static final Pattern NAMED = NamedTests.PATTERN;

    @Test
    void everyNamedTestExists() throws IOException {
        List<MatchResult> named =
                NAMED.matcher(Files.readString(PAGE)).results().toList();
        List<String> missing = new ArrayList<>();
        for (MatchResult test : named) {
            if (!NamedTests.exists(test.group(1), test.group(2))) {
                missing.add(test.group());
            }
        }
        assertTrue(named.size() > 50, "tests named: " + named.size());
        assertEquals(List.of(), missing);
    }

    @Test
    void everyHazardHasATest() throws IOException {
        List<String> rows = Files.readAllLines(PAGE).stream()
                .filter(line -> line.matches("\\| \\d+ \\|.*"))
                .toList();
        List<String> untested = rows.stream()
                .filter(row -> !NAMED.matcher(row.substring(row.lastIndexOf("| `") + 1))
                        .find())
                .toList();
        assertTrue(rows.size() > 20, "hazards: " + rows.size());
        assertEquals(List.of(), untested);
    }
}
