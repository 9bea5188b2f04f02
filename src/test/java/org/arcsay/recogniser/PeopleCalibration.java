package org.arcsay.recogniser;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.Collectors;
import org.arcsay.evaluate.WordErrors;
import org.arcsay.grammar.Lexicon;
import org.arcsay.grammar.SpokenGrammar;
import org.arcsay.model.Utterance;

/**
 * Measures word errors on recordings of people who say none of the grammar's sentences, such as single digits; for one
 * thread. Not a test: the figures under "Digits of people" in models/README.md come from here. Arguments: the model folder
 * and folders with clips.tsv (file, speaker, words). The recogniser knows the words of a folder that are in the model and
 * the way out over all others; where every recording is one word, one is what it expects.
 */
final class PeopleCalibration {
    private static final int RATE = 16_000;

    /** Of silence before and after what was said, in samples. */
    private static final int BEFORE = RATE / 2;

    private static final int AFTER = RATE * 3 / 2;

    /** Recordings of one speaker, their words and how they were heard. */
    private static final class Tally {
        private int right;
        private int taken;
        private int missed;
        private int words;
        private int errors;

        void add(List<String> said, List<String> heard, Set<String> known) {
            words += said.size();
            errors += WordErrors.between(said, heard);
            if (heard.equals(said)) {
                right++;
            } else if (known.containsAll(heard) && !heard.isEmpty()) {
                taken++;
            } else {
                missed++;
            }
        }

        void add(Tally other) {
            right += other.right;
            taken += other.taken;
            missed += other.missed;
            words += other.words;
            errors += other.errors;
        }

        @Override
        public String toString() {
            return String.format(
                    Locale.ROOT,
                    "right %d, heard as others of the words %d, not heard or as a word outside %d; word errors %.1f %% of %d",
                    right,
                    taken,
                    missed,
                    100.0 * errors / words,
                    words);
        }
    }

    private PeopleCalibration() {}

    public static void main(String[] arguments) throws Exception {
        for (String folder : List.of(arguments).subList(1, arguments.length)) {
            measure(ModelFolder.check(Path.of(arguments[0])), Path.of(folder));
        }
    }

    private static void measure(ModelFolder model, Path folder) throws Exception {
        List<Recordings.Clip> clips = Recordings.clips(folder).stream()
                .filter(clip -> model.words().containsAll(words(clip.words())))
                .toList();
        Set<String> known = clips.stream()
                .flatMap(clip -> words(clip.words()).stream())
                .collect(Collectors.toCollection(TreeSet::new));
        boolean single = clips.stream().allMatch(clip -> words(clip.words()).size() == 1);
        String grammar = "#JSGF V1.0; grammar people; public <said> = (" + String.join(" | ", known) + ")"
                + (single ? ";" : "+;");
        ModelFolder fitted = new ModelCache(Files.createTempDirectory("people"))
                .fit(model, SpokenGrammar.parse(grammar).graph(), Lexicon.EMPTY, SentencePause.LONG)
                .folder();
        Map<String, Tally> bySpeaker = new TreeMap<>();
        try (VoskModel loaded = VoskModel.load(fitted.path());
                Recogniser recogniser = loaded.recogniser(RATE)) {
            for (Recordings.Clip clip : clips) {
                List<String> heard = hear(recogniser, Recordings.samples(clip.wav()));
                bySpeaker.computeIfAbsent(clip.speaker(), name -> new Tally()).add(words(clip.words()), heard, known);
                if (!heard.equals(words(clip.words()))) {
                    System.out.println(clip.wav().getFileName() + ": " + clip.words() + " -> " + heard);
                }
            }
        }
        Tally all = new Tally();
        bySpeaker.forEach((name, tally) -> {
            all.add(tally);
            System.out.println(name + " " + tally);
        });
        System.out.println(folder + ", " + bySpeaker.size() + " people: " + all);
    }

    private static List<String> hear(Recogniser recogniser, short[] said) {
        short[] sound = new short[BEFORE + said.length + AFTER];
        System.arraycopy(said, 0, sound, BEFORE, said.length);
        return Recordings.hear(recogniser, sound).stream()
                .map(Utterance::text)
                .flatMap(text -> words(text).stream())
                .toList();
    }

    private static List<String> words(String text) {
        return Arrays.asList(text.split(" "));
    }
}
