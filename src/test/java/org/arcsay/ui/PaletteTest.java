package org.arcsay.ui;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;

/** Contrast as WCAG 2.2 defines it: success criteria 1.4.3 (text 4.5:1) and 1.4.11 (parts of controls 3:1). */
class PaletteTest {
    private static final Map<String, Palette> THEMES = Map.of("light", Palette.LIGHT, "dark", Palette.DARK);

    @TestFactory
    Stream<DynamicTest> textIsReadableOnEveryGround() {
        return THEMES.entrySet().stream().flatMap(theme -> theme.getValue().inks().entrySet().stream()
                .flatMap(ink -> theme.getValue().grounds().entrySet().stream()
                        .map(ground -> check(theme.getKey(), ink, ground, 4.5))));
    }

    @TestFactory
    Stream<DynamicTest> textIsReadableOnStrongFills() {
        return THEMES.entrySet().stream().flatMap(theme -> theme.getValue().filled().entrySet().stream()
                .map(ink -> check(
                        theme.getKey(),
                        ink,
                        Map.entry(
                                ink.getKey() + " fill", theme.getValue().inks().get(ink.getKey())),
                        4.5)));
    }

    @TestFactory
    Stream<DynamicTest> bordersAndFocusAreVisibleOnEveryGround() {
        return THEMES.entrySet().stream().flatMap(theme -> theme.getValue().lines().entrySet().stream()
                .flatMap(line -> theme.getValue().grounds().entrySet().stream()
                        .map(ground -> check(theme.getKey(), line, ground, 3))));
    }

    @Test
    void contrastIsComputedAsInTheStandardsOwnExamples() {
        assertEquals(21, contrast("#000000", "#FFFFFF"), 0.001);
        assertEquals(1, contrast("#777777", "#777777"), 0.001);
        assertEquals(4.48, contrast("#777777", "#FFFFFF"), 0.005);
        assertEquals(4.54, contrast("#767676", "#FFFFFF"), 0.005);
    }

    @Test
    void everyColourOfTheStyleSheetComesFromThePalette() throws java.io.IOException {
        try (var in = java.util.Objects.requireNonNull(Palette.class.getResourceAsStream("arcsay.css"))) {
            String css = new String(in.readAllBytes(), java.nio.charset.StandardCharsets.UTF_8);
            String tokens = Palette.LIGHT.css();
            var used = java.util.regex.Pattern.compile("-arc-[a-z-]+").matcher(css);
            while (used.find()) {
                assertTrue(tokens.contains(used.group() + ":"), used.group());
            }
            assertEquals(
                    List.of(),
                    java.util.regex.Pattern.compile("#[0-9A-Fa-f]{3,8}\\b")
                            .matcher(css)
                            .results()
                            .toList());
        }
    }

    private static DynamicTest check(
            String theme, Map.Entry<String, String> ink, Map.Entry<String, String> ground, double least) {
        double contrast = contrast(ink.getValue(), ground.getValue());
        String name = theme + ": " + ink.getKey() + " on " + ground.getKey();
        return DynamicTest.dynamicTest(name, () -> assertTrue(contrast >= least, name + " has only " + contrast));
    }

    private static double contrast(String one, String other) {
        double a = luminance(one);
        double b = luminance(other);
        return (Math.max(a, b) + 0.05) / (Math.min(a, b) + 0.05);
    }

    private static double luminance(String hex) {
        int rgb = Integer.parseInt(hex.substring(1), 16);
        return 0.2126 * linear(rgb >> 16 & 255) + 0.7152 * linear(rgb >> 8 & 255) + 0.0722 * linear(rgb & 255);
    }

    private static double linear(int channel) {
        double share = channel / 255.0;
        return share <= 0.04045 ? share / 12.92 : Math.pow((share + 0.055) / 1.055, 2.4);
    }
}
