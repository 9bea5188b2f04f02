package org.arcsay.grammar;

import java.util.ArrayList;
import java.util.List;
import org.arcsay.model.HelpCard;

/** Makes the help card from the comments of a grammar file. */
final class Examples {
    private static final String EXAMPLE = "@example ";

    private Examples() {}

    static HelpCard of(JsgfLinker.Rules rules) {
        return new HelpCard(rules.docs().values().stream()
                .filter(doc -> doc.contains(EXAMPLE))
                .map(Examples::section)
                .toList());
    }

    private static HelpCard.Section section(String doc) {
        String heading = "";
        List<String> examples = new ArrayList<>();
        for (String line : doc.lines()
                .map(l -> l.replaceFirst("^\\s*\\*?\\s*", "").strip())
                .toList()) {
            if (line.startsWith(EXAMPLE)) {
                examples.add(line.substring(EXAMPLE.length()).strip());
            } else if (heading.isEmpty()) {
                heading = line;
            }
        }
        return new HelpCard.Section(heading, examples);
    }
}
