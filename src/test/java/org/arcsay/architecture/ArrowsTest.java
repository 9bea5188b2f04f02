package org.arcsay.architecture;

import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static org.junit.jupiter.api.Assertions.assertEquals;

import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.core.importer.ImportOption;
import com.tngtech.archunit.lang.ArchRule;
import com.tngtech.archunit.library.dependencies.SlicesRuleDefinition;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;

/** The arrows of DEVELOPERS.md, executed. */
class ArrowsTest {
    private static final JavaClasses PROGRAM = new ClassFileImporter()
            .withImportOption(ImportOption.Predefined.DO_NOT_INCLUDE_TESTS)
            .importPackages("org.arcsay");

    /** What each package may use of ours, beside itself. */
    private static final Map<String, List<String>> ARROWS = Map.ofEntries(
            Map.entry("model", List.of()),
            Map.entry("tables", List.of("model")),
            Map.entry("audio", List.of()),
            Map.entry("grammar", List.of("model")),
            Map.entry("recogniser", List.of("audio", "grammar", "model")),
            Map.entry("parser", List.of("grammar", "model")),
            Map.entry("analysis", List.of("model", "tables")),
            Map.entry("validate", List.of("analysis", "model", "tables")),
            Map.entry("session", List.of("analysis", "parser", "validate", "tables", "model")),
            Map.entry("review", List.of("analysis", "session", "validate", "model")),
            Map.entry("store", List.of("session", "model")),
            Map.entry("report", List.of("analysis", "validate", "store", "session", "tables", "model")),
            Map.entry("feedback", List.of("session", "parser", "grammar", "audio", "analysis", "model")),
            Map.entry(
                    "app",
                    List.of(
                            "audio",
                            "recogniser",
                            "grammar",
                            "parser",
                            "session",
                            "validate",
                            "analysis",
                            "store",
                            "feedback",
                            "review",
                            "report",
                            "tables",
                            "model")),
            Map.entry(
                    "evaluate",
                    List.of(
                            "app",
                            "audio",
                            "recogniser",
                            "grammar",
                            "parser",
                            "session",
                            "validate",
                            "analysis",
                            "model")),
            Map.entry("ui", List.of("review", "report", "analysis", "session", "model")));

    @TestFactory
    Stream<DynamicTest> eachPackageUsesOnlyWhatItsArrowsAllow() {
        return ARROWS.entrySet().stream()
                .map(arrow -> DynamicTest.dynamicTest(arrow.getKey(), () -> onlyUses(arrow.getKey(), arrow.getValue())
                        .check(PROGRAM)));
    }

    /** A package that is new has no rule until it is named here and in the table of DEVELOPERS.md. */
    @Test
    void everyPackageHasItsArrowsHereAndInTheTable() throws IOException {
        Set<String> packages = PROGRAM.stream()
                .map(type -> type.getPackageName().replaceFirst("^org\\.arcsay\\.?", ""))
                .map(name -> name.replaceFirst("\\..*", ""))
                .filter(name -> !name.isEmpty())
                .collect(Collectors.toCollection(TreeSet::new));
        Set<String> ruled = new TreeSet<>(ARROWS.keySet());
        ruled.add("cli");
        assertEquals(packages, ruled);
        Set<String> told = Files.readAllLines(Path.of("DEVELOPERS.md")).stream()
                .map(Pattern.compile("\\| `([a-z]+)` \\| .* \\| .* \\|")::matcher)
                .filter(Matcher::matches)
                .map(row -> row.group(1))
                .collect(Collectors.toCollection(TreeSet::new));
        assertEquals(packages, told);
    }

    private static ArchRule onlyUses(String from, List<String> allowed) {
        String[] forbidden = Stream.concat(ARROWS.keySet().stream(), Stream.of("cli"))
                .filter(name -> !name.equals(from) && !allowed.contains(name))
                .map(ArrowsTest::inside)
                .toArray(String[]::new);
        return noClasses()
                .that()
                .resideInAPackage(inside(from))
                .should()
                .dependOnClassesThat()
                .resideInAnyPackage(forbidden)
                .allowEmptyShould(true);
    }

    private static String inside(String name) {
        return "org.arcsay." + name + "..";
    }

    @Test
    void noPackagesUseEachOtherInACircle() {
        SlicesRuleDefinition.slices()
                .matching("org.arcsay.(*)..")
                .should()
                .beFreeOfCycles()
                .check(PROGRAM);
    }

    @Test
    void nothingTouchesTheNetwork() {
        noClasses()
                .should()
                .dependOnClassesThat()
                .resideInAnyPackage("java.net", "java.net.http", "javax.net..", "java.rmi..", "sun.net..")
                .check(PROGRAM);
    }

    /** What is not logged cannot leak. The window toolkit's own messages are the exception, and are silenced there. */
    @Test
    void nothingWritesALog() {
        only("ui", "java.util.logging..", "org.slf4j..", "org.apache.commons.logging..")
                .check(PROGRAM);
    }

    @Test
    void nativeCodeStaysBehindTheRecogniser() {
        only("recogniser", "com.sun.jna..", "org.vosk..").check(PROGRAM);
    }

    @Test
    void databaseAccessStaysBehindTheStore() {
        only("store", "java.sql..", "javax.sql..", "org.sqlite..").check(PROGRAM);
    }

    @Test
    void windowsStayInUi() {
        only("ui", "javafx..", "atlantafx..").check(PROGRAM);
    }

    /** Nothing on the screen moves by itself, so that there is no motion to be reduced. */
    @Test
    void nothingIsAnimated() {
        noClasses()
                .should()
                .dependOnClassesThat()
                .resideInAPackage("javafx.animation..")
                .check(PROGRAM);
    }

    @Test
    void theCommandLineLibraryStaysInCli() {
        only("cli", "picocli..").check(PROGRAM);
    }

    @Test
    void standardStreamsStayInCli() {
        noClasses()
                .that()
                .resideOutsideOfPackage(inside("cli"))
                .should()
                .accessField(System.class, "out")
                .orShould()
                .accessField(System.class, "err")
                .check(PROGRAM);
    }

    private static ArchRule only(String name, String... libraries) {
        return noClasses()
                .that()
                .resideOutsideOfPackage(inside(name))
                .should()
                .dependOnClassesThat()
                .resideInAnyPackage(libraries);
    }
}
