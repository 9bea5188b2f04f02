package org.arcsay.recogniser;

import java.util.List;
import java.util.Locale;
import java.util.stream.Stream;

/**
 * The silence that ends a sentence, as the recogniser measures it; its look-ahead comes on top. See
 * docs/decisions/0012-joined-sentences.md.
 */
public enum SentencePause {
    /** Answers soonest. */
    SHORT(0.25, 0.35, 0.6),
    MEDIUM(0.35, 0.45, 0.8),
    /** For a slow or hesitant speaker. */
    LONG(0.5, 0.75, 1.0);

    private static final String FRAMES_PER_CHUNK = "--frames-per-chunk=";
    private static final String RULE = "--endpoint.rule%d.min-trailing-silence=";

    /** The network looks at the sound every 0.09 s; with Kaldi's 20 frames of 10 ms it would do so every 0.2 s. */
    private static final int CHUNK = 9;

    private final double sentence;
    private final double beginning;
    private final double anything;

    /**
     * All in seconds.
     *
     * @param sentence after what may well be a whole sentence
     * @param beginning after what is less likely to be one
     * @param anything after any words
     */
    SentencePause(double sentence, double beginning, double anything) {
        this.sentence = sentence;
        this.beginning = beginning;
        this.anything = anything;
    }

    public static SentencePause usual() {
        return SHORT;
    }

    /** The settings of a model's decoder, one a line, with these times in place of its own. */
    String in(String decoding) {
        List<String> own = List.of(
                rule(2) + seconds(sentence),
                rule(3) + seconds(beginning),
                rule(4) + seconds(anything),
                FRAMES_PER_CHUNK + CHUNK);
        Stream<String> kept = decoding.lines()
                .filter(line -> own.stream().noneMatch(set -> line.startsWith(set.substring(0, set.indexOf('=') + 1))));
        return String.join("\n", Stream.concat(kept, own.stream()).toList()) + "\n";
    }

    private static String rule(int number) {
        return String.format(Locale.ROOT, RULE, number);
    }

    private static String seconds(double seconds) {
        return String.format(Locale.ROOT, "%.2f", seconds);
    }
}
