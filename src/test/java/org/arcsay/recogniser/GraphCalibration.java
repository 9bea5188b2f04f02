package org.arcsay.recogniser;

import com.sun.jna.Library;
import com.sun.jna.Native;
import com.sun.jna.Pointer;
import java.io.IOException;
import java.lang.reflect.Proxy;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Random;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.function.Predicate;
import java.util.function.ToDoubleFunction;
import java.util.stream.Stream;
import org.arcsay.audio.AudioException;
import org.arcsay.audio.Wavs;
import org.arcsay.grammar.Lexicon;
import org.arcsay.grammar.SpokenGrammar;
import org.arcsay.grammar.Tag;
import org.arcsay.grammar.WordGraph;
import org.arcsay.model.Utterance;
import org.arcsay.model.Word;
import org.arcsay.parser.Command;
import org.arcsay.parser.Parser;
import org.arcsay.parser.Understood;
import org.arcsay.session.HearingDoubt;
import tools.jackson.databind.json.JsonMapper;

/**
 * Measures ways of restricting the recogniser on recordings with and without noise; for one thread. Not a test: the
 * numbers of docs/decisions/0002-strict-graph.md come from here. Arguments: the model folder, a folder with clips.tsv
 * (file, voice, "in" or "out", words), signal-to-noise ratios in dB joined by commas, and one way or more, each either
 * {@code phrases} or {@code branching:unknown:other:leaving}; or {@code write:FOLDER}, which recognises nothing and puts
 * the noisy recordings into a folder a ratio there, for another recogniser to hear. With {@code -Dnoises=FOLDER} the noise
 * is not talk and rumble but the WAV files of that folder (models/train/noises.py), one for each recording in turn.
 */
final class GraphCalibration {
    private static final int RATE = 16_000;
    private static final int BABBLERS = 4;
    private static final String WRITE = "write:";

    private static final double[] MOST_DOUBTS = {0.1, 0.2, 0.3, 0.5, 0.7, 1, 1.4, 2, 3, 5, 10, Double.POSITIVE_INFINITY
    };

    private record Clip(String file, boolean inGrammar, List<String> words, short[] samples) {}

    private record Noise(String name, NoiseMaker maker) {}

    /** A recording with noise in it, as it is heard. */
    private record Mixed(Clip clip, String noise, short[] sound) {}

    /** Makes noise of a number of samples with a root mean square of about one. */
    private interface NoiseMaker {
        double[] make(int length, Random random);
    }

    private record Score(
            int right, int wrong, int refused, int inGrammar, int accepted, int outOfGrammar, int ghosts, double load) {
        @Override
        public String toString() {
            return String.format(
                    Locale.ROOT,
                    "right %5.1f %%  wrong %5.1f %%  refused %5.1f %%  of %d | talk accepted %5.1f %% of %d | ghosts %d | load %.3f",
                    percent(right, inGrammar),
                    percent(wrong, inGrammar),
                    percent(refused, inGrammar),
                    inGrammar,
                    percent(accepted, outOfGrammar),
                    outOfGrammar,
                    ghosts,
                    load);
        }
    }

    /** The function that only the comparison needs. */
    private interface PhraseLists extends VoskLibrary {
        Pointer vosk_recognizer_new_grm(Pointer model, float sampleRate, String phrases);
    }

    private final SpokenGrammar grammar = SpokenGrammar.standard();
    private final Parser parser = new Parser(grammar);
    private final boolean verbose = Boolean.getBoolean("verbose");
    private final List<Noise> noises;

    private GraphCalibration(List<Noise> noises) {
        this.noises = noises;
    }

    public static void main(String[] arguments) throws Exception {
        List<Clip> clips = clips(Path.of(arguments[1]));
        new GraphCalibration(noises(System.getProperty("noises"), clips))
                .measure(
                        Path.of(arguments[0]),
                        clips,
                        Stream.of(arguments[2].split(",")).map(Integer::valueOf).toList(),
                        Arrays.asList(arguments).subList(3, arguments.length));
    }

    private void measure(Path model, List<Clip> clips, List<Integer> ratios, List<String> ways) throws Exception {
        Path cache = Files.createTempDirectory("calibration");
        for (String way : ways) {
            if (way.startsWith(WRITE)) {
                for (int ratio : ratios) {
                    write(Path.of(way.substring(WRITE.length()), String.valueOf(ratio)), clips, ratio);
                }
                continue;
            }
            for (int ratio : ratios) {
                try (Recogniser recogniser = recogniser(model, cache, way)) {
                    System.out.printf("%-14s %3d dB  %s%n", way, ratio, score(recogniser, clips, ratio));
                }
            }
        }
    }

    /** A new one for each ratio, since the noise it heard before stays in its measure of noise. */
    private Recogniser recogniser(Path model, Path cache, String way) throws ModelException {
        ModelFolder folder = ModelFolder.check(model);
        if (way.equals("phrases")) {
            return phraseListRecogniser(folder);
        }
        double[] costs = Stream.of(way.split(":")).mapToDouble(Double::valueOf).toArray();
        ModelFolder fitted = new ModelCache(cache)
                .fit(
                        folder,
                        grammar.graph(),
                        Lexicon.EMPTY,
                        SentencePause.LONG,
                        new GraphCosts(costs[0], costs[1], costs[2], costs[3]))
                .folder();
        return VoskModel.load(fitted.path()).recogniser(RATE);
    }

    /** The phrase list of all neighbouring words of the grammar, which makes the recogniser's own bigram model. */
    private Recogniser phraseListRecogniser(ModelFolder folder) {
        Library.Handler loaded = (Library.Handler) Proxy.getInvocationHandler(VoskNative.library());
        PhraseLists library = Native.load(
                loaded.getNativeLibrary().getFile().toString(),
                PhraseLists.class,
                Map.of(Library.OPTION_STRING_ENCODING, "UTF-8"));
        Pointer model =
                Objects.requireNonNull(library.vosk_model_new(folder.path().toString()));
        String phrases = JsonMapper.shared().writeValueAsString(neighbours(grammar.graph(), folder));
        return new VoskRecogniser(
                library, () -> library.vosk_recognizer_new_grm(model, RATE, phrases), RATE, VoskRecogniser.RENEWAL);
    }

    private static Set<String> neighbours(WordGraph graph, ModelFolder folder) {
        Set<String> phrases = new TreeSet<>(Set.of(Word.UNKNOWN));
        for (WordGraph.State state : graph.states()) {
            state.arcs().forEach((word, target) -> {
                for (String next : graph.states().get(target).arcs().keySet()) {
                    phrases.add(word + " " + next);
                }
            });
        }
        graph.states().get(graph.start()).arcs().forEach((word, target) -> {
            if (graph.states().get(target).accepting()) {
                phrases.add(word);
            }
        });
        phrases.removeIf(phrase ->
                Stream.of(phrase.split(" ")).anyMatch(word -> !folder.wordIds().containsKey(word)));
        return phrases;
    }

    /** An utterance with a meaning in the grammar. */
    private record Piece(Set<List<Tag>> meaning, Understood understood) {}

    /**
     * An in-grammar recording in which something was understood: was it what was said, and what else could it have been?
     *
     * @param done what the program does of it at once
     */
    private record Accepted(String noise, boolean correct, List<Understood> said, Done done) {
        double most(ToDoubleFunction<Understood> doubt) {
            return said.stream().mapToDouble(doubt).max().orElse(0);
        }

        double signalToNoise() {
            return said.stream().mapToDouble(Understood::signalToNoise).min().orElse(0);
        }

        double doubt() {
            return most(HearingDoubt::doubt);
        }
    }

    private void printNoises(List<Accepted> accepted, Map<String, Integer> said) {
        said.forEach((noise, count) -> {
            List<Accepted> in =
                    accepted.stream().filter(a -> a.noise().equals(noise)).toList();
            System.out.printf(
                    Locale.ROOT,
                    "    %-16s right/wrong %.1f/%.1f, saved at once %.1f/%.1f of %d%n",
                    noise,
                    share(in, Accepted::correct, count),
                    share(in, reading -> !reading.correct(), count),
                    share(in, reading -> reading.done() == Done.RIGHT, count),
                    share(in, reading -> reading.done() == Done.WRONG, count),
                    count);
        });
    }

    /** None of none is none. */
    private static double percent(long count, int of) {
        return 100.0 * count / Math.max(1, of);
    }

    private static double share(List<Accepted> accepted, Predicate<Accepted> wanted, int of) {
        return percent(accepted.stream().filter(wanted).count(), of);
    }

    private void printDoubts(List<Accepted> accepted, int inGrammar) {
        StringBuilder line = new StringBuilder("    most doubt: right/wrong");
        for (double most : MOST_DOUBTS) {
            line.append(String.format(
                    Locale.ROOT,
                    "  %s: %.1f/%.1f",
                    most,
                    share(accepted, reading -> reading.doubt() <= most && reading.correct(), inGrammar),
                    share(accepted, reading -> reading.doubt() <= most && !reading.correct(), inGrammar)));
        }
        System.out.println(line);
        System.out.printf(
                Locale.ROOT,
                "    saved at once by the program: %.1f/%.1f%n",
                share(accepted, reading -> reading.done() == Done.RIGHT, inGrammar),
                share(accepted, reading -> reading.done() == Done.WRONG, inGrammar));
    }

    /** What comes of a recording at once: what was said, something else, or neither. */
    private enum Done {
        RIGHT,
        WRONG,
        NOTHING
    }

    /** A reading that the program refuses for what it says counts as done right if it was heard right. */
    private static Done done(List<Piece> pieces, Set<List<Tag>> said) {
        List<Set<List<Tag>>> done = pieces.stream()
                .filter(piece -> deed(piece.understood()).compareTo(Deed.ASKED) > 0
                        || (piece.understood().command() instanceof Command.Rejected
                                && piece.meaning().equals(said)))
                .map(Piece::meaning)
                .toList();
        if (done.equals(List.of(said))) {
            return Done.RIGHT;
        }
        return done.isEmpty() ? Done.NOTHING : Done.WRONG;
    }

    /** What the program does with an utterance where no question is open, the worst last. */
    private enum Deed {
        NOTHING,
        /** A measure without its value, for which it asks. */
        ASKED,
        OBEYED,
        SAVED
    }

    /** A number alone is nothing: it is refused where no question is open. */
    private static Deed deed(Understood said) {
        Command command = said.command();
        if (!HearingDoubt.isActedOn(said)) {
            return Deed.NOTHING;
        }
        if (command instanceof Command.Number number) {
            return number.correction() ? Deed.SAVED : Deed.NOTHING;
        }
        if (command instanceof Command.Arc arc) {
            return arc.correction() ? Deed.SAVED : Deed.NOTHING;
        }
        if (command instanceof Command.Rejected || command instanceof Command.KindNamed) {
            return Deed.NOTHING;
        }
        if (command instanceof Command.Named) {
            return Deed.ASKED;
        }
        return command instanceof Command.Dictated ? Deed.SAVED : Deed.OBEYED;
    }

    private static void printPiece(Piece piece, int ratio, Set<List<Tag>> meant) {
        Understood said = piece.understood();
        System.out.printf(
                Locale.ROOT,
                "    PIECE %d dB %b %s others %.6f outside %.6f ratio %.1f%n",
                ratio,
                piece.meaning().equals(meant),
                said.command().getClass().getSimpleName(),
                said.others(),
                said.outside(),
                said.signalToNoise());
    }

    private static double share(List<Deed> deeds, Deed wanted) {
        return percent(deeds.stream().filter(wanted::equals).count(), deeds.size());
    }

    private Set<List<Tag>> meanings(String text) {
        return grammar.meanings(Arrays.asList(text.split(" ")));
    }

    private Score score(Recogniser recogniser, List<Clip> clips, int ratio) {
        List<Accepted> readings = new ArrayList<>();
        List<Deed> talk = new ArrayList<>();
        int right = 0;
        int wrong = 0;
        int in = 0;
        int accepted = 0;
        int ghosts = 0;
        long samples = 0;
        long begin = cpuNanos();
        Map<String, Integer> said = new TreeMap<>();
        for (Mixed mixed : mixed(clips, ratio)) {
            Clip clip = mixed.clip();
            samples += mixed.sound().length;
            List<Utterance> heard = Recordings.hear(recogniser, mixed.sound());
            List<Piece> pieces = heard.stream()
                    .map(utterance -> new Piece(meanings(utterance.text()), parser.understand(utterance)))
                    .filter(piece -> !piece.meaning().isEmpty())
                    .toList();
            Set<List<Tag>> meant = grammar.meanings(clip.words());
            boolean correct = pieces.stream().map(Piece::meaning).toList().equals(List.of(meant));
            if (clip.inGrammar()) {
                in++;
                said.merge(mixed.noise(), 1, Integer::sum);
                ghosts += heard.size() - pieces.size();
                right += correct ? 1 : 0;
                wrong += !correct && !pieces.isEmpty() ? 1 : 0;
                if (!pieces.isEmpty()) {
                    Accepted reading = new Accepted(
                            mixed.noise(),
                            correct,
                            pieces.stream().map(Piece::understood).toList(),
                            done(pieces, meant));
                    readings.add(reading);
                }
            } else {
                accepted += pieces.isEmpty() ? 0 : 1;
                talk.add(pieces.stream()
                        .map(piece -> deed(piece.understood()))
                        .max(Deed::compareTo)
                        .orElse(Deed.NOTHING));
            }
            if (verbose) {
                pieces.forEach(piece -> printPiece(piece, ratio, meant));
            }
            if (verbose && (clip.inGrammar() ? !correct : !pieces.isEmpty())) {
                System.out.println("    " + String.join(" ", clip.words()) + " -> "
                        + heard.stream()
                                .map(u -> u.text() + String.format(" %.4f", u.probability()))
                                .toList());
            }
        }
        printDoubts(readings, in);
        if (noises.size() > 1) {
            printNoises(readings, said);
        }
        System.out.printf(
                Locale.ROOT,
                "    of talk saved at once by the program: %.1f, obeyed: %.1f, the value asked for: %.1f%n",
                share(talk, Deed.SAVED),
                share(talk, Deed.OBEYED),
                share(talk, Deed.ASKED));
        double load = (cpuNanos() - begin) / 1e9 / ((double) samples / RATE);
        return new Score(right, wrong, in - right - wrong, in, accepted, clips.size() - in, ghosts, load);
    }

    /** The same sound as {@link #score} hears. */
    private void write(Path folder, List<Clip> clips, int ratio) throws IOException {
        Files.createDirectories(folder);
        for (Mixed mixed : mixed(clips, ratio)) {
            Wavs.write(folder.resolve(mixed.clip().file()), mixed.sound());
        }
    }

    /** All recordings, each with the next of the noises; the same sound in every run. */
    private List<Mixed> mixed(List<Clip> clips, int ratio) {
        Random random = new Random(5);
        List<Mixed> all = new ArrayList<>();
        for (int place = 0; place < clips.size(); place++) {
            Noise noise = noises.get(place % noises.size());
            short[] samples = clips.get(place).samples();
            all.add(new Mixed(clips.get(place), noise.name(), noisy(samples, noise, ratio, random)));
        }
        return all;
    }

    private static long cpuNanos() {
        return java.lang.management.ManagementFactory.getThreadMXBean().getCurrentThreadCpuTime();
    }

    /** The noise at a ratio to the loud parts of the speech. */
    private static short[] noisy(short[] speech, Noise noise, int ratio, Random random) {
        double[] sound = noise.maker().make(speech.length, random);
        double level = loudness(speech) * Math.pow(10, -ratio / 20.0);
        short[] mixed = new short[speech.length];
        for (int j = 0; j < mixed.length; j++) {
            mixed[j] = (short) Math.max(-32768, Math.min(32767, Math.round(0.5 * (speech[j] + level * sound[j]))));
        }
        return mixed;
    }

    /** A piece of the recording from anywhere in it. */
    private static double[] cut(short[] noise, int length, Random random) {
        int shift = random.nextInt(noise.length);
        double[] piece = new double[length];
        for (int j = 0; j < length; j++) {
            piece[j] = noise[(j + shift) % noise.length];
        }
        double level = rms(piece);
        for (int j = 0; j < length; j++) {
            piece[j] /= level;
        }
        return piece;
    }

    /** Half babble of other recordings, half low-frequency rumble. */
    private static double[] talkAndRumble(int length, List<Clip> clips, Random random) {
        double[] babble = new double[length];
        for (int i = 0; i < BABBLERS; i++) {
            short[] other = clips.get(random.nextInt(clips.size())).samples();
            int shift = random.nextInt(other.length);
            for (int j = 0; j < length; j++) {
                babble[j] += other[(j + shift) % other.length];
            }
        }
        double[] rumble = new double[length];
        double slow = 0;
        for (int j = 0; j < length; j++) {
            slow = 0.95 * slow + random.nextGaussian();
            rumble[j] = slow + 0.3 * random.nextGaussian();
        }
        double babbleLevel = rms(babble) * Math.sqrt(2);
        double rumbleLevel = rms(rumble) * Math.sqrt(2);
        double[] both = new double[length];
        for (int j = 0; j < length; j++) {
            both[j] = babble[j] / babbleLevel + rumble[j] / rumbleLevel;
        }
        return both;
    }

    private static double loudness(short[] speech) {
        double[] loud = new double[speech.length];
        int count = 0;
        for (short sample : speech) {
            if (Math.abs(sample) > 200) {
                loud[count++] = sample;
            }
        }
        return rms(Arrays.copyOf(loud, count));
    }

    private static double rms(double[] values) {
        return Math.sqrt(Arrays.stream(values).map(v -> v * v).sum() / values.length);
    }

    private static List<Noise> noises(String folder, List<Clip> clips) throws IOException, AudioException {
        if (folder == null) {
            return List.of(new Noise("talk and rumble", (length, random) -> talkAndRumble(length, clips, random)));
        }
        List<Path> files;
        try (Stream<Path> found = Files.list(Path.of(folder))) {
            files = found.filter(file -> file.toString().endsWith(".wav"))
                    .sorted()
                    .toList();
        }
        List<Noise> noises = new ArrayList<>();
        for (Path file : files) {
            short[] recorded = Recordings.samples(file);
            noises.add(new Noise(
                    file.getFileName().toString().replace(".wav", ""),
                    (length, random) -> cut(recorded, length, random)));
        }
        return noises;
    }

    private static List<Clip> clips(Path folder) throws IOException, AudioException {
        List<Clip> clips = new ArrayList<>();
        for (String line :
                Files.readAllLines(folder.resolve("clips.tsv")).stream().skip(1).toList()) {
            String[] fields = line.split("\t");
            clips.add(new Clip(
                    fields[0],
                    fields[2].equals("in"),
                    List.of(fields[3].split(" ")),
                    Recordings.samples(folder.resolve(fields[0]))));
        }
        return clips;
    }
}
