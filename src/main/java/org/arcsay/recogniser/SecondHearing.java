package org.arcsay.recogniser;

import com.sun.jna.Pointer;
import java.time.Duration;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Supplier;
import org.arcsay.model.Utterance;
import org.arcsay.model.Utterance.Rival;
import org.arcsay.model.Word;

/**
 * Hears an utterance again where noise or rivals leave it unsure; for one thread.
 *
 * <p>The second time it is played a little quicker, which also raises it: to the network another voice, which seldom makes it
 * mistaken in the same way. Both hearings count the same. Each has a native recogniser of its own, which costs less than a
 * millisecond and, unlike one that is kept, hardly any memory. Why: docs/decisions/0019-heard-twice.md.
 */
final class SecondHearing {
    /** What is longer is heard once: no sentence of the grammar is. */
    static final Duration LONGEST = Duration.ofSeconds(12);

    /** Sound before and after the words that is heard with them. */
    static final Duration AROUND = Duration.ofMillis(500);

    /** Below it (dB) an utterance is heard again. */
    private static final double NOISY = 20;

    /** Or if its rivals have more than this together. */
    private static final double UNCLEAR = 0.05;

    private static final double QUICKER = 1.06;

    private final VoskLibrary library;
    private final Supplier<Pointer> maker;
    private final int margin;
    private final NoiseFloor floor = new NoiseFloor();

    /**
     * @param maker makes a native recogniser
     * @param margin frames of silence before and after the sound: those of {@link VoskRecogniser#MARGIN}
     */
    SecondHearing(VoskLibrary library, Supplier<Pointer> maker, int margin) {
        this.library = library;
        this.maker = maker;
        this.margin = margin;
    }

    static boolean isNeeded(Utterance first) {
        return first.signalToNoise() < NOISY || first.probability() < 1 - UNCLEAR;
    }

    /**
     * What was heard, weighed with a second hearing.
     *
     * @param sound of the utterance and around it
     * @param from time of its first frame
     */
    Utterance together(Utterance first, short[] sound, Duration from) {
        Pointer open = maker.get();
        try {
            short[] padded = padded(quicker(sound));
            library.vosk_recognizer_accept_waveform_s(open, padded, padded.length);
            return weighed(
                    first,
                    VoskJson.utterance(library.vosk_recognizer_result(open), VoskRecogniser.MARGIN.negated()),
                    from);
        } finally {
            library.vosk_recognizer_free(open);
        }
    }

    private short[] padded(short[] sound) {
        short[] padded = new short[sound.length + 2 * margin];
        System.arraycopy(sound, 0, padded, margin, sound.length);
        return floor.under(padded, padded.length);
    }

    /** By linear interpolation, as the sounds of the training are. */
    static short[] quicker(short[] sound) {
        short[] quicker = new short[(int) ((sound.length - 1) / QUICKER)];
        for (int i = 0; i < quicker.length; i++) {
            int before = (int) (i * QUICKER);
            double share = i * QUICKER - before;
            double sample = sound[before] * (1 - share) + sound[before + 1] * share;
            quicker[i] = (short) Math.round(sample);
        }
        return quicker;
    }

    /** Every way of hearing has the mean of its two probabilities; the words are the likelier of the two likeliest. */
    static Utterance weighed(Utterance first, Optional<Utterance> again, Duration from) {
        Map<String, Double> means = new LinkedHashMap<>();
        addHalves(means, first);
        again.ifPresentOrElse(second -> addHalves(means, second), () -> means.merge("", 0.5, Double::sum));
        Utterance likelier = again.filter(
                        second -> means.getOrDefault(second.text(), 0.0) > means.getOrDefault(first.text(), 0.0))
                .map(second -> new Utterance(inTime(second.words(), from), List.of()))
                .orElse(first);
        means.remove(likelier.text());
        List<Rival> rivals = new ArrayList<>();
        means.forEach((text, probability) -> rivals.add(new Rival(text, probability)));
        rivals.sort((a, b) -> Double.compare(b.probability(), a.probability()));
        return new Utterance(likelier.words(), rivals, first.signalToNoise());
    }

    private static void addHalves(Map<String, Double> means, Utterance heard) {
        means.merge(heard.text(), heard.probability() / 2, Double::sum);
        heard.rivals().forEach(rival -> means.merge(rival.text(), rival.probability() / 2, Double::sum));
    }

    private static List<Word> inTime(List<Word> words, Duration from) {
        return words.stream()
                .map(word ->
                        new Word(word.text(), inTime(word.start(), from), inTime(word.end(), from), word.confidence()))
                .toList();
    }

    private static Duration inTime(Duration quicker, Duration from) {
        return from.plus(Duration.ofNanos(Math.round(Math.max(0, quicker.toNanos()) * QUICKER)));
    }
}
