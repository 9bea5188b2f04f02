package org.arcsay.recogniser;

import java.time.Duration;
import java.util.List;
import java.util.Optional;
import java.util.stream.DoubleStream;
import java.util.stream.IntStream;
import org.arcsay.model.Utterance;
import org.arcsay.model.Utterance.Rival;
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
            @Nullable List<Alternative> alternatives,
            @Nullable String partial) {}

    /**
     * One way of hearing the sound.
     *
     * @param confidence natural logarithm of its likelihood, up to a constant that all alternatives share
     */
    private record Alternative(double confidence, @Nullable List<TimedWord> result, String text) {
        List<TimedWord> words() {
            return result == null ? List.of() : result;
        }
    }

    private record TimedWord(String word, double start, double end) {
        boolean isIn(Alternative other) {
            return other.words().stream().anyMatch(w -> w.word.equals(word) && w.start < end && start < w.end);
        }
    }

    private VoskJson() {}

    /**
     * Reads a finished result. A word is as probable as all alternatives together that have it at that time.
     *
     * @param shift added to all times
     */
    static Optional<Utterance> utterance(String json, Duration shift) {
        List<Alternative> alternatives = MAPPER.readValue(json, Result.class).alternatives();
        if (alternatives == null
                || alternatives.isEmpty()
                || alternatives.get(0).words().isEmpty()) {
            return Optional.empty();
        }
        double[] probabilities = probabilities(alternatives);
        List<Word> words = alternatives.get(0).words().stream()
                .map(word -> word(word, shift, share(word, alternatives, probabilities)))
                .toList();
        List<Rival> rivals = IntStream.range(1, alternatives.size())
                .mapToObj(i -> new Rival(alternatives.get(i).text(), probabilities[i]))
                .toList();
        return Optional.of(new Utterance(words, rivals));
    }

    static Optional<String> partial(String json) {
        return Optional.ofNullable(MAPPER.readValue(json, Result.class).partial())
                .filter(text -> !text.isBlank());
    }

    private static double[] probabilities(List<Alternative> alternatives) {
        double best = alternatives.get(0).confidence();
        double[] shares = alternatives.stream()
                .mapToDouble(alternative -> Math.exp(alternative.confidence() - best))
                .toArray();
        double all = DoubleStream.of(shares).sum();
        return DoubleStream.of(shares).map(share -> share / all).toArray();
    }

    private static double share(TimedWord word, List<Alternative> alternatives, double[] probabilities) {
        return Math.min(
                1,
                IntStream.range(0, alternatives.size())
                        .filter(i -> word.isIn(alternatives.get(i)))
                        .mapToDouble(i -> probabilities[i])
                        .sum());
    }

    private static Word word(TimedWord word, Duration shift, double confidence) {
        return new Word(
                word.word(),
                seconds(word.start()).plus(shift),
                seconds(word.end()).plus(shift),
                confidence);
    }

    private static Duration seconds(double seconds) {
        return Duration.ofNanos(Math.round(seconds * NANOS_PER_SECOND));
    }
}
