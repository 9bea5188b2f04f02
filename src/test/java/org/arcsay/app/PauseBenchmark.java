package org.arcsay.app;

import java.io.PrintStream;
import java.math.BigDecimal;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.arcsay.analysis.SeriesPlans;
import org.arcsay.audio.AudioSource;
import org.arcsay.audio.WavSource;
import org.arcsay.grammar.SpokenGrammar;
import org.arcsay.grammar.SpokenNumbers;
import org.arcsay.model.ClinicSettings;
import org.arcsay.model.Entry;
import org.arcsay.model.Heard;
import org.arcsay.model.Mode;
import org.arcsay.model.PatientCode;
import org.arcsay.model.Reading;
import org.arcsay.model.Side;
import org.arcsay.model.Utterance;
import org.arcsay.model.Versions;
import org.arcsay.model.Visit;
import org.arcsay.model.Word;
import org.arcsay.parser.Joining;
import org.arcsay.parser.Parser;
import org.arcsay.recogniser.Recogniser;
import org.arcsay.recogniser.SentencePause;
import org.arcsay.session.Context;
import org.arcsay.session.VisitSession;
import org.arcsay.validate.History;
import org.arcsay.validate.Validator;

/**
 * Counts what becomes of readings that are said with a pause inside; run by hand with a folder of recordings and their
 * {@code clips.tsv} (file, voice, words), the step from one recording to the next, and the endings to try.
 *
 * <p>The pause, of faint noise, is put between two words where the recogniser marks their border: before the value, inside the
 * number, or before what qualifies it.
 */
public final class PauseBenchmark {
    private static final PrintStream OUT = System.out;
    private static final int RATE = 16_000;
    private static final int[] PAUSES = {200, 400, 600, 800, 1000};
    private static final Set<String> NUMBERS = Stream.concat(
                    Stream.of("oh", "point"),
                    IntStream.rangeClosed(0, SpokenNumbers.HIGHEST)
                            .mapToObj(BigDecimal::valueOf)
                            .flatMap(number -> SpokenNumbers.words(number).stream()))
            .collect(Collectors.toSet());
    private static final Versions VERSIONS = new Versions("pauses", "pauses", "pauses");

    private final Parser parser = new Parser(SpokenGrammar.standard());
    private final Validator validator = Validator.standard();
    private final Random random = new Random(7);

    private enum Place {
        BEFORE_VALUE,
        INSIDE_NUMBER,
        BEFORE_QUALIFIER
    }

    private enum Fate {
        RIGHT,
        ASKED,
        REFUSED,
        WRONG
    }

    private record Clip(String name, short[] samples, List<Word> words, List<Reading> expected) {}

    private record Cut(Clip clip, Place place, int at) {}

    private PauseBenchmark() {}

    public static void main(String[] args) throws Exception {
        List<SentencePause> endings = args.length < 3
                ? List.of(SentencePause.values())
                : Arrays.stream(args).skip(2).map(SentencePause::valueOf).toList();
        new PauseBenchmark().run(Path.of(args[0]), Integer.parseInt(args[1]), endings);
    }

    private void run(Path folder, int step, List<SentencePause> endings) throws Exception {
        Path cache = Files.createTempDirectory("arcsay-pauses");
        Map<SentencePause, Ears> ears = new EnumMap<>(SentencePause.class);
        for (SentencePause pause : SentencePause.values()) {
            ears.put(pause, Ears.open(cache, Optional.empty(), SpokenGrammar.standard(), pause));
        }
        List<Cut> cuts = new ArrayList<>();
        List<String> rows = Files.readAllLines(folder.resolve("clips.tsv"));
        for (int i = 1; i < rows.size(); i += step) {
            String[] cells = rows.get(i).split("\t");
            clip(ears.get(SentencePause.LONG), folder.resolve(cells[0]), cells[2])
                    .ifPresent(clip -> cuts.addAll(cuts(clip)));
        }
        OUT.println(cuts.size() + " places in "
                + cuts.stream().map(Cut::clip).distinct().count() + " recordings");
        OUT.println("ends after | joined | place | pause ms | right | asked | refused | wrong");
        for (SentencePause pause : endings) {
            count(ears.get(pause), pause, cuts);
        }
    }

    private void count(Ears ears, SentencePause ending, List<Cut> cuts) throws Exception {
        Map<String, int[]> table = new TreeMap<>();
        for (Cut cut : cuts) {
            for (int pause : PAUSES) {
                List<Utterance> pieces = heard(ears, with(cut, pause));
                for (boolean joining : new boolean[] {false, true}) {
                    Fate fate = fate(cut.clip(), pieces, joining);
                    if (fate == Fate.WRONG) {
                        OUT.println("# wrong: " + ending + " " + (joining ? "joined " : "apart ")
                                + cut.clip().name() + " "
                                + cut.place() + " " + pause + " "
                                + pieces.stream().map(Utterance::text).toList() + " for "
                                + cut.clip().words().stream().map(Word::text).toList());
                    }
                    String key = String.format(
                            Locale.ROOT, "%s | %s | %-16s | %4d", ending, joining ? "yes" : "no ", cut.place(), pause);
                    table.computeIfAbsent(key, k -> new int[Fate.values().length])[fate.ordinal()]++;
                    String all = String.format(Locale.ROOT, "%s | %s | all", ending, joining ? "yes" : "no ");
                    table.computeIfAbsent(all, k -> new int[Fate.values().length])[fate.ordinal()]++;
                }
            }
        }
        table.forEach((key, counts) -> OUT.println(key + " | " + Arrays.toString(counts)));
    }

    private Optional<Clip> clip(Ears ears, Path wav, String words) throws Exception {
        List<Utterance> heard = heard(ears, samples(wav));
        return heard.size() == 1 && heard.get(0).text().equals(words)
                ? Optional.of(new Clip(
                        wav.getFileName().toString(), samples(wav), heard.get(0).words(), kept(heard, false, false)))
                : Optional.empty();
    }

    private static List<Cut> cuts(Clip clip) {
        List<Cut> cuts = new ArrayList<>();
        List<Word> words = clip.words();
        for (int i = 1; i < words.size(); i++) {
            boolean before = NUMBERS.contains(words.get(i - 1).text());
            boolean after = NUMBERS.contains(words.get(i).text());
            if (before || after) {
                Place place = before ? (after ? Place.INSIDE_NUMBER : Place.BEFORE_QUALIFIER) : Place.BEFORE_VALUE;
                long border = words.get(i - 1).end().plus(words.get(i).start()).toMillis() / 2;
                cuts.add(new Cut(clip, place, (int) (border * RATE / 1000)));
            }
        }
        return cuts;
    }

    private short[] with(Cut cut, int millis) {
        short[] samples = cut.clip().samples();
        short[] whole = new short[samples.length + millis * RATE / 1000];
        System.arraycopy(samples, 0, whole, 0, cut.at());
        int resumed = cut.at() + millis * RATE / 1000;
        for (int i = cut.at(); i < resumed; i++) {
            whole[i] = (short) Math.round(random.nextGaussian() * 8);
        }
        System.arraycopy(samples, cut.at(), whole, resumed, samples.length - cut.at());
        return whole;
    }

    private static short[] samples(Path wav) throws Exception {
        try (AudioSource source = WavSource.open(wav)) {
            short[] all = new short[60 * RATE];
            short[] block = new short[RATE];
            int count = 0;
            for (int n = source.read(block); n >= 0; n = source.read(block)) {
                System.arraycopy(block, 0, all, count, n);
                count += n;
            }
            return Arrays.copyOf(all, count);
        }
    }

    private static List<Utterance> heard(Ears ears, short[] samples) {
        List<Utterance> pieces = new ArrayList<>();
        try (Recogniser recogniser = ears.recogniser(RATE)) {
            short[] all = Arrays.copyOf(samples, samples.length + 2 * RATE);
            for (int at = 0; at < all.length; at += CaptureLoop.BLOCK.toMillis() * RATE / 1000) {
                short[] block = Arrays.copyOfRange(
                        all, at, Math.min(all.length, at + (int) (CaptureLoop.BLOCK.toMillis() * RATE / 1000)));
                recogniser.accept(block, block.length).ifPresent(pieces::add);
            }
            recogniser.finish().ifPresent(pieces::add);
        }
        return pieces;
    }

    private Fate fate(Clip clip, List<Utterance> pieces, boolean joining) {
        List<Reading> kept = kept(pieces, joining, false);
        List<Reading> sure = kept(pieces, joining, true);
        if (sure.equals(clip.expected())) {
            return Fate.RIGHT;
        }
        if (!sure.isEmpty()) {
            return Fate.WRONG;
        }
        return kept.isEmpty() ? Fate.REFUSED : Fate.ASKED;
    }

    private List<Reading> kept(List<Utterance> pieces, boolean joining, boolean sure) {
        VisitSession session = new VisitSession(
                Visit.begun(1, new PatientCode("T-1"), OffsetDateTime.now()),
                event -> {},
                (reading, state) -> validator.judge(reading, state, History.none()),
                SeriesPlans.standard().usual(),
                ClinicSettings.defaults(),
                new Context(Optional.of(Side.RIGHT), Mode.ACTIVE),
                Clock.systemDefaultZone());
        Joining links = new Joining(parser);
        for (Utterance piece : pieces) {
            if (joining) {
                links.next(piece).ifPresent(said -> session.handle(said, Heard.spoken(said.utterance(), VERSIONS)));
            } else if (!piece.isBreath()) {
                session.handle(parser.understand(piece), Heard.spoken(piece, VERSIONS));
            }
        }
        return session.visit().counting().stream()
                .filter(entry -> !sure || !entry.doubtful())
                .map(Entry::reading)
                .toList();
    }
}
