package org.arcsay.grammar;

import java.util.List;

/** The right-hand side of a grammar rule as a tree. */
sealed interface Expansion {
    record Token(String word) implements Expansion {}

    record Meaning(Tag tag) implements Expansion {}

    /** A use of another rule, or of a number rule such as {@code numbers.value}. */
    record Reference(String rule) implements Expansion {}

    /** One part after the other; no parts stand for silence. */
    record Sequence(List<Expansion> parts) implements Expansion {
        static final Sequence EMPTY = new Sequence(List.of());

        public Sequence {
            parts = List.copyOf(parts);
        }
    }

    record Choice(List<Expansion> options) implements Expansion {
        public Choice {
            options = List.copyOf(options);
        }

        static Choice optional(Expansion part) {
            return new Choice(List.of(part, Sequence.EMPTY));
        }
    }
}
