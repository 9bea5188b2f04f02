package org.arcsay.model;

import java.util.List;
import java.util.Optional;

/**
 * One judgement about an entry, as data.
 *
 * @param rule stable id of the rule, such as {@code limit.high}
 * @param severity how much it matters
 * @param sentence one sentence for a person, with the numbers and the reason
 * @param numbers the numbers compared, labelled, in the order in which the sentence uses them
 * @param alternative another value that would fit better (teen/ty partner, swapped digits), to be offered and never applied
 */
public record Finding(
        String rule, Severity severity, String sentence, List<LabelledNumber> numbers, Optional<Value> alternative) {
    public Finding {
        numbers = List.copyOf(numbers);
    }

    public Finding(String rule, Severity severity, String sentence, List<LabelledNumber> numbers) {
        this(rule, severity, sentence, numbers, Optional.empty());
    }

    /**
     * A number with its meaning and unit.
     *
     * @param label what it is, such as "limit"
     * @param number the number as text, without unit
     * @param unit "degrees", "mm", "cm", "in" or "" for a score
     */
    public record LabelledNumber(String label, String number, String unit) {}
}
