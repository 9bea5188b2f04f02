package org.arcsay.feedback;

import java.io.BufferedInputStream;
import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;

/** The built-in voice: joins recorded word clips into sentences. Immutable once loaded, so any thread may use it. */
public final class ClipVoice {
    /** The slowest speaking rate. */
    public static final double SLOWEST = 0.7;

    /** The quickest speaking rate. */
    public static final double QUICKEST = 1.7;

    private static final String FOLDER = "/org/arcsay/voice/";
    private static final int CROSS_FADE = Sound.RATE * 22 / 1000;
    private static final Sound COMMA = Sound.silence(Duration.ofMillis(50));
    private static final Sound AFTER_TONE = Sound.silence(Duration.ofMillis(20));

    private final Map<String, Sound> clips;

    private ClipVoice(Map<String, Sound> clips) {
        this.clips = clips;
    }

    /** The voice that comes with the program. */
    public static ClipVoice builtIn() {
        return BuiltIn.VOICE;
    }

    /** The words and word groups it has a clip for. */
    public Set<String> words() {
        return clips.keySet();
    }

    public boolean canSay(Sentence sentence) {
        return sentence.phrases().stream().allMatch(clips.keySet()::containsAll);
    }

    /**
     * The tone and the words of an answer as one sound.
     *
     * @param rate 1 for the normal pace, from {@value #SLOWEST} to {@value #QUICKEST}; tones keep their pace
     */
    public Sound say(Answer answer, double rate) {
        List<Sound> parts = new ArrayList<>();
        answer.earcon().map(Earcon::sound).ifPresent(parts::add);
        if (!answer.sentence().isEmpty()) {
            if (!parts.isEmpty()) {
                parts.add(AFTER_TONE);
            }
            parts.add(say(answer.sentence(), rate));
        }
        return Sound.sequence(parts);
    }

    /**
     * A sentence as sound.
     *
     * @throws IllegalArgumentException when the rate is out of bounds or there is no clip for a word
     */
    public Sound say(Sentence sentence, double rate) {
        if (!(rate >= SLOWEST && rate <= QUICKEST)) {
            throw new IllegalArgumentException(
                    "the speaking rate must be between " + SLOWEST + " and " + QUICKEST + ", not " + rate);
        }
        List<Sound> parts = new ArrayList<>();
        for (List<String> phrase : sentence.phrases()) {
            if (!parts.isEmpty()) {
                parts.add(COMMA);
            }
            parts.add(join(phrase.stream().map(this::clip).toList()));
        }
        return TimeScale.change(Sound.sequence(parts), rate);
    }

    private Sound clip(String word) {
        Sound clip = clips.get(word);
        if (clip == null) {
            throw new IllegalArgumentException("the built-in voice has no clip for '" + word + "'");
        }
        return clip;
    }

    private static Sound join(List<Sound> words) {
        int length = words.stream().mapToInt(Sound::length).sum() - CROSS_FADE * (words.size() - 1);
        short[] joined = new short[length];
        int at = 0;
        for (Sound word : words) {
            lay(word, joined, at);
            at += word.length() - CROSS_FADE;
        }
        return Sound.of(joined);
    }

    private static void lay(Sound word, short[] joined, int at) {
        for (int i = 0; i < word.length(); i++) {
            boolean fadingIn = at > 0 && i < CROSS_FADE;
            boolean fadingOut = at + word.length() < joined.length && i >= word.length() - CROSS_FADE;
            double weight =
                    fadingIn ? (double) i / CROSS_FADE : fadingOut ? (double) (word.length() - i) / CROSS_FADE : 1;
            joined[at + i] += (short) Math.round(word.sample(i) * weight);
        }
    }

    private static final class BuiltIn {
        private static final ClipVoice VOICE = load();

        private static ClipVoice load() {
            Map<String, Sound> clips = new LinkedHashMap<>();
            try (BufferedReader index =
                    new BufferedReader(new InputStreamReader(resource("index.tsv"), StandardCharsets.UTF_8))) {
                for (String line = index.readLine(); line != null; line = index.readLine()) {
                    String[] cells = line.split("\t");
                    clips.put(cells[1], clip(cells[0]));
                }
            } catch (IOException e) {
                throw new UncheckedIOException("the built-in voice cannot be read; install the program again", e);
            }
            return new ClipVoice(Map.copyOf(clips));
        }

        private static Sound clip(String file) throws IOException {
            try (InputStream in = resource(file)) {
                return Sound.read(new BufferedInputStream(in));
            }
        }

        private static InputStream resource(String name) {
            return Objects.requireNonNull(ClipVoice.class.getResourceAsStream(FOLDER + name), name);
        }
    }
}
