package org.arcsay.evaluate;

import java.util.List;

/** Word errors between what was said and what was heard. Immutable. */
public final class WordErrors {
    private WordErrors() {}

    /**
     * The least number of insertions, deletions and substitutions that make one sentence of the other.
     *
     * @param said words in order, or what counts as one word for another, such as its pronunciations; none is allowed
     * @param heard likewise
     * @return 0 or more
     */
    public static <W> int between(List<W> said, List<W> heard) {
        int[] row = new int[heard.size() + 1];
        for (int j = 0; j <= heard.size(); j++) {
            row[j] = j;
        }
        for (int i = 1; i <= said.size(); i++) {
            int diagonal = row[0];
            row[0] = i;
            for (int j = 1; j <= heard.size(); j++) {
                int substituted = diagonal + (said.get(i - 1).equals(heard.get(j - 1)) ? 0 : 1);
                diagonal = row[j];
                row[j] = Math.min(substituted, Math.min(row[j], row[j - 1]) + 1);
            }
        }
        return row[heard.size()];
    }
}
