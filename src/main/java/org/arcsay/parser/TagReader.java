package org.arcsay.parser;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import org.arcsay.grammar.Tag;

/** Typed access to the tags of one meaning. */
record TagReader(List<Tag> tags) {
    Optional<String> text(String key) {
        return tags.stream()
                .filter(tag -> tag.key().equals(key))
                .map(Tag::value)
                .findFirst();
    }

    <T> Optional<T> value(String key, Function<String, T> read) {
        return text(key).map(read);
    }

    String required(String key) {
        return text(key)
                .orElseThrow(() -> new IllegalArgumentException("the grammar gives no '" + key + "' in " + tags));
    }

    /** Every number in the order said, with its decimal. */
    List<BigDecimal> numbers() {
        List<BigDecimal> numbers = new ArrayList<>();
        for (Tag tag : tags) {
            if (tag.key().equals("number")) {
                numbers.add(new BigDecimal(tag.value()));
            } else if (tag.key().equals("tenths")) {
                BigDecimal whole = numbers.remove(numbers.size() - 1);
                numbers.add(whole.add(new BigDecimal(tag.value()).movePointLeft(1)));
            }
        }
        return numbers;
    }

    BigDecimal number() {
        return numbers().get(0);
    }

    /** One group of tags for each part that begins with the given key; what comes before the first is left out. */
    List<TagReader> partsFrom(String key) {
        List<List<Tag>> parts = new ArrayList<>();
        for (Tag tag : tags) {
            if (tag.key().equals(key)) {
                parts.add(new ArrayList<>());
            }
            if (!parts.isEmpty()) {
                parts.get(parts.size() - 1).add(tag);
            }
        }
        return parts.stream().map(TagReader::new).toList();
    }
}
