package org.arcsay.recogniser;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.Collectors;
import org.arcsay.evaluate.WordErrors;
import org.arcsay.grammar.Lexicon;
import org.arcsay.grammar.WordGraph;
import org.arcsay.model.Utterance;

/**
 * Measures word errors on recordings of people who say none of the grammar's sentences but digits and letters; for one
 * thread. Not a test: the figures under "Digits of people" in models/README.md come from here. Arguments: the model folder
 * and folders with clips.tsv (file, speaker, words). The recogniser expects the words of a folder, one after another or,
 * where every recording is one word, one of them, beside the way out over all words of the model. Recordings with a word
 * that is not in the model are left out.
 */
final class PeopleCalibration {
    private static final Lexicon LEXICON = Lexicon.standard();
    private static final int RATE = 16_000;

    /** Of silence before and after what was said, in samples. */
    private static final int BEFORE = RATE / 2;

    private static final int AFTER = RATE * 3 / 2;

    /** All ways of saying a word, which are the same of "o" and "oh". */
    private record Sound(Set<List<String>> pronunciations) {
        static Sound of(String word) {
            return new Sound(LEXICON.words().getOrDefault(word, Set.of(List.of(word))));
        }
    }

    /** Recordings of one speaker, their words and how they were heard. */
    private static final class Tally {
        private int right;
        private int taken;
        private int missed;
        private int words;
        private int errors;

        /** Adds a recording; returns whether it was heard right. */
        boolean add(List<Sound> said, List<Sound> heard, Set<Sound> known) {
            words += said.size();
            errors += WordErrors.between(said, heard);
            if (heard.equals(said)) {
                right++;
                return true;
            }
            if (known.containsAll(heard) && !heard.isEmpty()) {
                taken++;
            } else {
                missed++;
            }
            return false;
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
        ModelFolder fitted = new ModelCache(Files.createTempDirectory("people"))
                .fit(model, graph(known, single), Lexicon.EMPTY, SentencePause.LONG)
                .folder();
        Map<String, List<Recordings.Clip>> bySpeaker = clips.stream()
                .collect(Collectors.groupingBy(Recordings.Clip::speaker, TreeMap::new, Collectors.toList()));
        Set<Sound> sounds = known.stream().map(Sound::of).collect(Collectors.toSet());
        Tally all = new Tally();
        try (VoskModel loaded = VoskModel.load(fitted.path())) {
            for (Map.Entry<String, List<Recordings.Clip>> speaker : bySpeaker.entrySet()) {
                Tally tally = tally(loaded, speaker.getValue(), sounds);
                all.add(tally);
                System.out.println(speaker.getKey() + " " + tally);
            }
        }
        System.out.println(folder + ", " + bySpeaker.size() + " people: " + all);
    }

    /** A recogniser for each speaker, as for each visit. */
    private static Tally tally(VoskModel model, List<Recordings.Clip> clips, Set<Sound> known) throws Exception {
        Tally tally = new Tally();
        try (Recogniser recogniser = model.recogniser(RATE)) {
            for (Recordings.Clip clip : clips) {
                List<String> said = words(clip.words());
                List<String> heard = hear(recogniser, Recordings.samples(clip.wav()));
                if (!tally.add(sounds(said), sounds(heard), known)) {
                    System.out.println(clip.wav().getFileName() + ": " + said + " -> " + heard);
                }
            }
        }
        return tally;
    }

    /** One of the words or, if not {@code single}, any number of them. */
    private static WordGraph graph(Set<String> words, boolean single) {
        SortedMap<String, Integer> arcs = new TreeMap<>();
        words.forEach(word -> arcs.put(word, 1));
        SortedMap<String, Integer> more = single ? new TreeMap<>() : arcs;
        return new WordGraph(0, List.of(new WordGraph.State(false, arcs), new WordGraph.State(true, more)));
    }

    private static List<String> hear(Recogniser recogniser, short[] said) {
        short[] sound = new short[BEFORE + said.length + AFTER];
        System.arraycopy(said, 0, sound, BEFORE, said.length);
        return Recordings.hear(recogniser, sound).stream()
                .map(Utterance::text)
                .flatMap(text -> words(text).stream())
                .toList();
    }

    private static List<Sound> sounds(List<String> words) {
        return words.stream().map(Sound::of).toList();
    }

    private static List<String> words(String text) {
        return Arrays.asList(text.split(" "));
    }
}
