package org.arcsay.model;

/**
 * The versions that produced or judged an entry, kept with it for ever.
 *
 * @param grammar short checksum of the grammar files
 * @param model name and short checksum of the speech model, or "none" for typed entries
 * @param rules version of the plausibility rules and tables
 */
public record Versions(String grammar, String model, String rules) {}
