package org.arcsay.docs;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.lang.reflect.Method;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.platform.commons.annotation.Testable;
import org.junit.platform.commons.support.AnnotationSupport;

class HazardsTest {
    private static final Path PAGE = Path.of("docs", "hazards.md");
    private static final Pattern NAMED = Pattern.compile("`([a-z/]+/[A-Z][A-Za-z]+)#([A-Za-z0-9]+)`");

    @Test
    void everyNamedTestExists() throws IOException {
        List<MatchResult> named =
                NAMED.matcher(Files.readString(PAGE)).results().toList();
        List<String> missing = new ArrayList<>();
        for (MatchResult test : named) {
            if (!exists("org.arcsay." + test.group(1).replace('/', '.'), test.group(2))) {
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

    private static boolean exists(String type, String name) {
        try {
            return has(Class.forName(type, false, HazardsTest.class.getClassLoader()), name);
        } catch (ClassNotFoundException e) {
            return false;
        }
    }

    private static boolean has(Class<?> type, String name) {
        return Arrays.stream(type.getDeclaredMethods()).anyMatch(method -> isTest(method, name))
                || Arrays.stream(type.getDeclaredClasses()).anyMatch(nested -> has(nested, name));
    }

    private static boolean isTest(Method method, String name) {
        return method.getName().equals(name) && AnnotationSupport.isAnnotated(method, Testable.class);
    }
}
