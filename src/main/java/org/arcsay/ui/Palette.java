package org.arcsay.ui;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.stream.Collectors;

/**
 * The colours of one theme by the part they play. Text tokens keep 4.5:1 on every ground, lines and marks 3:1.
 *
 * @param grounds what text stands on
 * @param inks what is read on any ground
 * @param filled ink on a strong fill, keyed by the name of the fill; the fills themselves are among the inks
 * @param lines borders of controls and the focus ring
 * @param dark whether light text stands on dark ground
 */
record Palette(
        Map<String, String> grounds,
        Map<String, String> inks,
        Map<String, String> filled,
        Map<String, String> lines,
        boolean dark) {

    static final Palette LIGHT = new Palette(
            ordered(
                    "paper", "#F5F2EB", "sheet", "#FFFFFF", "chosen", "#DDEBEA", "caution", "#FBEFD5", "alarm",
                    "#FBE4E4"),
            ordered(
                    "ink", "#1A2430",
                    "quiet", "#4A5563",
                    "accent", "#0A5563",
                    "held", "#97182B",
                    "doubt", "#734200",
                    "sure", "#17603A",
                    "open", "#3D4D66"),
            ordered("accent", "#FFFFFF", "held", "#FFFFFF", "sure", "#FFFFFF"),
            ordered("line", "#767E88", "focus", "#B0480E"),
            false);

    static final Palette DARK = new Palette(
            ordered(
                    "paper", "#11181F", "sheet", "#1A232C", "chosen", "#1F3A41", "caution", "#352B14", "alarm",
                    "#401D22"),
            ordered(
                    "ink", "#EFF3F6",
                    "quiet", "#B6C1CC",
                    "accent", "#7BD5E2",
                    "held", "#FFA6AD",
                    "doubt", "#F3C875",
                    "sure", "#8CDDA8",
                    "open", "#BCCAE0"),
            ordered("accent", "#06222A", "held", "#3A070D", "sure", "#06260F"),
            ordered("line", "#8A97A4", "focus", "#FFB37A"),
            true);

    /** Every token as a looked-up colour for the root of a scene, with the theme's own names mapped to ours. */
    String css() {
        Map<String, String> tokens = new LinkedHashMap<>();
        grounds.forEach((name, colour) -> tokens.put("-arc-" + name, colour));
        inks.forEach((name, colour) -> tokens.put("-arc-" + name, colour));
        filled.forEach((name, colour) -> tokens.put("-arc-on-" + name, colour));
        lines.forEach((name, colour) -> tokens.put("-arc-" + name, colour));
        tokens.put("-color-bg-default", grounds.get("sheet"));
        tokens.put("-color-bg-overlay", grounds.get("sheet"));
        tokens.put("-color-bg-subtle", grounds.get("paper"));
        tokens.put("-color-bg-inset", grounds.get("paper"));
        tokens.put("-color-fg-default", inks.get("ink"));
        tokens.put("-color-fg-muted", inks.get("quiet"));
        tokens.put("-color-fg-subtle", inks.get("quiet"));
        tokens.put("-color-border-default", lines.get("line"));
        tokens.put("-color-border-muted", lines.get("line"));
        tokens.put("-color-accent-fg", inks.get("accent"));
        tokens.put("-color-accent-emphasis", inks.get("accent"));
        tokens.put("-color-accent-muted", lines.get("focus"));
        tokens.put("-color-accent-subtle", grounds.get("chosen"));
        tokens.put("-color-fg-emphasis", filled.get("accent"));
        return tokens.entrySet().stream()
                .map(token -> token.getKey() + ": " + token.getValue() + ";")
                .collect(Collectors.joining(" "));
    }

    private static Map<String, String> ordered(String... pairs) {
        Map<String, String> map = new LinkedHashMap<>();
        for (int i = 0; i < pairs.length; i += 2) {
            map.put(pairs[i], pairs[i + 1]);
        }
        return Map.copyOf(map);
    }
}
