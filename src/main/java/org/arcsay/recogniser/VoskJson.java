package org.arcsay.recogniser;

import java.time.Duration;
import java.util.List;
import java.util.Optional;
import org.arcsay.model.Utterance;
import org.arcsay.model.Word;
import org.jspecify.annotations.Nullable;
import tools.jackson.databind.DeserializationFeature;
import tools.jackson.databind.json.JsonMapper;

/** Reads the recogniser's results, which are JSON texts. */
final class VoskJson {
    private static final JsonMapper MAPPER = JsonMapper.builder()
            .disable(DeserializationFeature.FAIL_ON_UNKNOWN_PROPERTIES)
            .build();
    private static final double NANOS_PER_SECOND = 1e9;

    private record Result(
            @Nullable List<ResultWord> result,
            @Nullable String text,
            @Nullable String partial) {}

    private record ResultWord(String word, double start, double end, double conf) {}

    private VoskJson() {}

    /**
     * Reads a finished result.
     *
     * @param shift added to all times
     */
    static Optional<Utterance> utterance(String json, Duration shift) {
        List<ResultWord> words = MAPPER.readValue(json, Result.class).result();
        if (words == null || words.isEmpty()) {
            return Optional.empty();
        }
        return Optional.of(
                new Utterance(words.stream().map(word -> word(word, shift)).toList()));
    }

    static Optional<String> partial(String json) {
        return Optional.ofNullable(MAPPER.readValue(json, Result.class).partial())
                .filter(text -> !text.isBlank());
    }

    private static Word word(ResultWord word, Duration shift) {
        return new Word(
                word.word(),
                seconds(word.start()).plus(shift),
                seconds(word.end()).plus(shift),
                Math.min(1, Math.max(0, word.conf())));
    }

    private static Duration seconds(double seconds) {
        return Duration.ofNanos(Math.round(seconds * NANOS_PER_SECOND));
    }
}
