package org.arcsay.grammar;

import java.util.ArrayList;
import java.util.List;

/**
 * What can be said, grouped as in the grammar file.
 *
 * @param sections in the order of the file
 */
public record HelpCard(List<Section> sections) {
    private static final String EXAMPLE = "@example ";

    public HelpCard {
        sections = List.copyOf(sections);
    }

    /**
     * One group of phrases.
     *
     * @param heading what they are for
     * @param examples sentences that can be said
     */
    public record Section(String heading, List<String> examples) {
        public Section {
            examples = List.copyOf(examples);
        }
    }

    static HelpCard of(JsgfLinker.Rules rules) {
        return new HelpCard(rules.docs().values().stream()
                .filter(doc -> doc.contains(EXAMPLE))
                .map(HelpCard::section)
                .toList());
    }

    private static Section section(String doc) {
        String heading = "";
        List<String> examples = new ArrayList<>();
        for (String line : doc.lines().map(l -> l.replaceFirst("^\\s*\\*?\\s*", "").strip()).toList()) {
            if (line.startsWith(EXAMPLE)) {
                examples.add(line.substring(EXAMPLE.length()).strip());
            } else if (heading.isEmpty()) {
                heading = line;
            }
        }
        return new Section(heading, examples);
    }
}
