package org.arcsay.model;

import java.util.List;

/**
 * What can be said, grouped as in the grammar file.
 *
 * @param sections in the order of the file
 */
public record HelpCard(List<Section> sections) {
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
}
