package org.arcsay.docs;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.core.importer.ImportOption;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Set;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.arcsay.validate.Rule;
import org.arcsay.validate.Validator;
import org.junit.jupiter.api.Test;

/** The table of capability, source and test is true. */
class CapabilitiesTest {
    private static final Path PAGE = Path.of("docs", "computation.md");
    private static final Pattern CODE = Pattern.compile("`([A-Z][A-Za-z]+)`");

    private static List<String[]> rows() throws IOException {
        return Files.readAllLines(PAGE).stream()
                .filter(line -> line.startsWith("| ") && line.contains("#"))
                .map(line -> line.substring(2, line.length() - 2).split(" \\| "))
                .toList();
    }

    @Test
    void everyLineHasASourceAMarkCodeAndATestThatExists() throws IOException {
        List<String[]> rows = rows();
        assertTrue(rows.size() >= 40, "capabilities: " + rows.size());
        Set<String> classes = classes();
        for (String[] row : rows) {
            assertEquals(5, row.length, row[0]);
            assertTrue(row[1].length() > 3 && row[2].length() > 3, row[0]);
            List<MatchResult> code = CODE.matcher(row[3]).results().toList();
            assertTrue(!code.isEmpty(), row[0]);
            code.forEach(named -> assertTrue(classes.contains(named.group(1)), row[0] + ": " + named.group(1)));
            List<MatchResult> tests =
                    NamedTests.PATTERN.matcher(row[4]).results().toList();
            assertTrue(!tests.isEmpty(), row[0]);
            tests.forEach(test -> assertTrue(NamedTests.exists(test.group(1), test.group(2)), test.group()));
        }
    }

    @Test
    void everyRuleThatLooksAtACapabilityHasALine() throws IOException {
        String code = rows().stream().map(row -> row[3]).collect(Collectors.joining());
        List<String> without = Validator.standard().rules().stream()
                .map(Rule::getClass)
                .map(Class::getSimpleName)
                .filter(name -> !code.contains("`" + name + "`"))
                .toList();
        assertEquals(List.of("Repeat", "NoNumber", "ReasonMissing"), without, "beyond what is asked for");
    }

    private static Set<String> classes() {
        return new ClassFileImporter()
                .withImportOption(ImportOption.Predefined.DO_NOT_INCLUDE_TESTS).importPackages("org.arcsay").stream()
                        .map(JavaClass::getSimpleName)
                        .collect(Collectors.toSet());
    }
}
