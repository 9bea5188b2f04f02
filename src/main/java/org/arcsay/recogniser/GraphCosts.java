package org.arcsay.recogniser;

/**
 * Costs on the arcs of the strict graph, in natural-log units of the decoder (acoustic scale 1).
 *
 * @param branching factor on the logarithm of the number of ways to go on from a state; 1 makes them equally probable, 0
 *     makes all sentences cost the same
 * @param unknownWord for each stretch of sound taken as no known word
 * @param otherWord for each word taken out of its grammar
 * @param leaving for a sentence that begins in the grammar and goes on outside it
 */
public record GraphCosts(double branching, double unknownWord, double otherWord, double leaving) {
    /** See docs/decisions/0002-strict-graph.md for how they were found. */
    public static final GraphCosts DEFAULT = new GraphCosts(1, 3, 5.5, 2);
}
