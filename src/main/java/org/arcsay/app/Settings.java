package org.arcsay.app;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.function.BiFunction;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.arcsay.analysis.Comparison.Yardstick;
import org.arcsay.analysis.Customs;
import org.arcsay.analysis.ErrorFigure.Confidence;
import org.arcsay.analysis.MeasurementError;
import org.arcsay.analysis.NormSet;
import org.arcsay.analysis.NormSets;
import org.arcsay.analysis.Notation;
import org.arcsay.analysis.Rater;
import org.arcsay.analysis.SeriesPlan;
import org.arcsay.analysis.SeriesPlans;
import org.arcsay.feedback.ClipVoice;
import org.arcsay.feedback.FeedbackLevel;
import org.arcsay.feedback.VoiceSettings;
import org.arcsay.feedback.VoiceSettings.Voice;
import org.arcsay.grammar.GrammarException;
import org.arcsay.grammar.SpokenGrammar;
import org.arcsay.model.ClinicSettings;
import org.arcsay.model.LengthUnit;
import org.arcsay.model.SignConvention;
import org.arcsay.recogniser.SentencePause;
import org.arcsay.review.Appearance;
import org.arcsay.tables.TableException;

/**
 * The settings file of a clinic: one {@code key = value} a line, comments after {@code #}.
 *
 * @param clinic the decisions that change what is understood
 * @param model folder of another speech model, if one is set
 * @param grammar short name of a built-in grammar or path of a grammar file, if one is set
 * @param lexicon file with pronunciations of own words, if one is set
 * @param microphone name of the recording device, if one is set
 * @param answers how answers sound
 * @param pause the silence that ends a sentence
 * @param habits series, norms and sound keeping
 * @param appearance theme and size of text
 */
public record Settings(
        ClinicSettings clinic,
        Optional<Path> model,
        Optional<String> grammar,
        Optional<Path> lexicon,
        Optional<String> microphone,
        Answers answers,
        SentencePause pause,
        Habits habits,
        Appearance appearance) {
    private static final Map<String, SignConvention> SIGNS = Map.of(
            "ask", SignConvention.UNSET,
            "minus-is-deficit", SignConvention.MINUS_IS_DEFICIT,
            "minus-is-hyperextension", SignConvention.MINUS_IS_HYPEREXTENSION);
    private static final Map<String, LengthUnit> UNITS =
            Map.of("mm", LengthUnit.MILLIMETRE, "cm", LengthUnit.CENTIMETRE, "in", LengthUnit.INCH);
    private static final Map<String, Voice> VOICES = named(Voice.values());
    private static final Map<String, FeedbackLevel> LEVELS = named(FeedbackLevel.values());
    private static final Map<String, SentencePause> PAUSES = named(SentencePause.values());
    private static final Map<String, Boolean> YES_NO = Map.of("yes", true, "no", false);
    private static final Map<String, Rater> RATERS = Map.of("different", Rater.DIFFERENT, "same", Rater.SAME);
    private static final Map<String, Confidence> CONFIDENCES =
            Map.of("95", Confidence.NINETY_FIVE, "90", Confidence.NINETY);
    private static final Map<String, Notation> NOTATIONS = Map.of(
            "words", Notation.PLAIN_WORDS,
            "arc", Notation.TWO_NUMBERS,
            "neutral-zero-extension-first", Notation.NEUTRAL_ZERO_EXTENSION_FIRST,
            "neutral-zero-flexion-first", Notation.NEUTRAL_ZERO_FLEXION_FIRST);
    private static final Map<String, Boolean> THEMES = Map.of("light", false, "dark", true);
    private static final Map<String, Integer> SIZES =
            Appearance.SIZES.stream().collect(Collectors.toMap(String::valueOf, Function.identity()));

    /**
     * What is usual in this clinic.
     *
     * @param plan the series that a visit is to complete
     * @param plans all series to choose from, the clinic's own among them
     * @param customs how readings are compared and written
     * @param normSets the norm sets to choose from: the clinic's own first, then the shipped ones
     * @param keepSound whether the sound of visits is kept
     */
    public record Habits(
            SeriesPlan plan, List<SeriesPlan> plans, Customs customs, List<NormSet> normSets, boolean keepSound) {
        static final Habits DEFAULTS = new Habits(
                SeriesPlans.standard().usual(),
                SeriesPlans.standard().all(),
                Customs.usual(),
                NormSets.standard().all(),
                false);

        public Habits {
            plans = List.copyOf(plans);
            normSets = List.copyOf(normSets);
        }
    }

    /**
     * How answers sound where a command does not say otherwise.
     *
     * @param level how much is said, if it is set
     * @param pace pace of the words, 1 is normal
     * @param voice whose words they are
     * @param output name of a sound output, or empty for the system's default
     */
    public record Answers(Optional<FeedbackLevel> level, double pace, Voice voice, String output) {
        static final Answers DEFAULTS = new Answers(Optional.empty(), 1, Voice.BUILT_IN, "");

        /**
         * @param usual the level that holds where none is set
         */
        public VoiceSettings or(FeedbackLevel usual) {
            return new VoiceSettings(level.orElse(usual), pace, voice, output);
        }
    }

    public static Settings defaults() {
        return new Settings(
                ClinicSettings.defaults(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Answers.DEFAULTS,
                SentencePause.usual(),
                Habits.DEFAULTS,
                Appearance.USUAL);
    }

    /** The settings file cannot be used; the message names the line and says what is allowed. */
    public static final class SettingsException extends Exception {
        private static final long serialVersionUID = 1L;

        SettingsException(String message) {
            super(message);
        }
    }

    /**
     * Reads a settings file; a file that is not there gives the defaults.
     *
     * @throws SettingsException naming the line with an unknown key or a value that is not allowed
     */
    public static Settings read(Path file) throws SettingsException {
        return Files.exists(file) ? of(file, lines(file)) : defaults();
    }

    /**
     * What a line sets.
     *
     * @param where file, line and key, to begin a message with
     */
    private record Set(String where, String value) {
        <T> T oneOf(Map<String, T> allowed) throws SettingsException {
            T known = allowed.get(value);
            if (known == null) {
                throw wrong(String.join(", ", allowed.keySet().stream().sorted().toList()));
            }
            return known;
        }

        double pace() throws SettingsException {
            try {
                double pace = Double.parseDouble(value);
                if (VoiceSettings.isRate(pace)) {
                    return pace;
                }
            } catch (NumberFormatException e) {
                // Told below, as a number that is out of bounds is.
            }
            throw new SettingsException(where + " cannot be '" + value + "'; use a number from " + ClipVoice.SLOWEST
                    + " to " + ClipVoice.QUICKEST);
        }

        Path path() throws SettingsException {
            try {
                return Path.of(value);
            } catch (InvalidPathException e) {
                throw new SettingsException(where + " cannot be '" + value + "'; give the path of a file or folder");
            }
        }

        String grammar() throws SettingsException {
            return SpokenGrammar.isBundled(value) ? value : file().toString();
        }

        Path file() throws SettingsException {
            Path path = path();
            if (!Files.isRegularFile(path)) {
                throw new SettingsException(where + " cannot be '" + value + "'; there is no such file");
            }
            return path;
        }

        /** A table of the clinic, from a file. */
        <T> T table(BiFunction<String, String, T> reader) throws SettingsException {
            Path file = file();
            try {
                return reader.apply(file.toString(), Files.readString(file));
            } catch (IOException e) {
                throw new SettingsException(where + " cannot be '" + value + "'; it is no UTF-8 text");
            } catch (TableException e) {
                throw new SettingsException(
                        where + " cannot be '" + value + "'. " + e.getMessage() + " 'arcsay tables' shows the form.");
            }
        }

        private SettingsException wrong(String allowed) {
            return new SettingsException(where + " cannot be '" + value + "'; use one of " + allowed);
        }
    }

    private static <T> Map<String, T> named(T[] values) {
        return Arrays.stream(values)
                .collect(Collectors.toMap(value -> value.toString().toLowerCase(Locale.ROOT), Function.identity()));
    }

    /** The values that the lines set, by their keys. */
    static Map<String, String> values(Path file, List<String> lines) throws SettingsException {
        Map<String, String> values = new TreeMap<>();
        sets(file, lines).forEach((key, set) -> values.put(key, set.value()));
        return values;
    }

    private static Map<String, Set> sets(Path file, List<String> lines) throws SettingsException {
        Map<String, Set> values = new TreeMap<>();
        for (int i = 0; i < lines.size(); i++) {
            String line = lines.get(i).replaceFirst("(^|\\s)#.*", "").strip();
            if (!line.isEmpty()) {
                String where = file + ", line " + (i + 1) + ": ";
                String[] parts = line.split("\\s*=\\s*", 2);
                if (parts.length < 2) {
                    throw new SettingsException(where + "expected 'key = value' and found '" + line + "'");
                }
                if (SettingKey.named(parts[0]).isEmpty()) {
                    throw new SettingsException(where + "unknown key '" + parts[0] + "'; known are "
                            + String.join(", ", SettingKey.texts()));
                }
                values.put(parts[0], new Set(where + parts[0], parts[1]));
            }
        }
        return values;
    }

    static List<String> lines(Path file) throws SettingsException {
        try {
            return Files.readAllLines(file, StandardCharsets.UTF_8);
        } catch (IOException e) {
            throw new SettingsException("The settings file " + file + " cannot be read as text (" + e.getMessage()
                    + "). Mend or remove it; without it the defaults hold.");
        }
    }

    /** The settings that these lines of a file make. */
    static Settings of(Path file, List<String> lines) throws SettingsException {
        Map<String, Set> values = sets(file, lines);
        ClinicSettings usual = ClinicSettings.defaults();
        List<SeriesPlan> plans = plans(values);
        return new Settings(
                new ClinicSettings(
                        one(values, "sign", SIGNS).orElse(usual.signConvention()),
                        one(values, "unit", UNITS).orElse(usual.lengthUnit())),
                values.containsKey("model") ? Optional.of(values.get("model").path()) : Optional.empty(),
                values.containsKey("grammar")
                        ? Optional.of(values.get("grammar").grammar())
                        : Optional.empty(),
                file(values, "lexicon"),
                text(values, "microphone"),
                answers(values),
                one(values, "pause", PAUSES).orElse(SentencePause.usual()),
                new Habits(
                        one(values, "plan", byId(plans)).orElse(Habits.DEFAULTS.plan()),
                        plans,
                        customs(values),
                        normSets(values),
                        one(values, "keep-sound", YES_NO).orElse(Habits.DEFAULTS.keepSound())),
                new Appearance(
                        one(values, "theme", THEMES).orElse(Appearance.USUAL.dark()),
                        one(values, "text-size", SIZES).orElse(Appearance.USUAL.textPercent())));
    }

    private static Customs customs(Map<String, Set> values) throws SettingsException {
        Customs usual = Customs.usual();
        Map<String, NormSet> sets = new LinkedHashMap<>();
        List<NormSet> known = normSets(values);
        known.forEach(set -> sets.putIfAbsent(set.id(), set));
        Yardstick yardstick = new Yardstick(
                values.containsKey("measurement-error")
                        ? values.get("measurement-error").table(MeasurementError::read)
                        : usual.yardstick().error(),
                one(values, "rater", RATERS).orElse(usual.yardstick().rater()),
                one(values, "confidence", CONFIDENCES).orElse(usual.yardstick().confidence()));
        return new Customs(
                one(values, "norms", sets).orElse(usual.norms()),
                yardstick,
                one(values, "notation", NOTATIONS).orElse(usual.notation()));
    }

    private static List<NormSet> normSets(Map<String, Set> values) throws SettingsException {
        List<NormSet> sets = new ArrayList<>();
        if (values.containsKey("norm-file")) {
            sets.addAll(values.get("norm-file").table(NormSets::read).all());
        }
        sets.addAll(NormSets.standard().all());
        return sets;
    }

    private static Map<String, SeriesPlan> byId(List<SeriesPlan> plans) {
        return plans.stream().collect(Collectors.toMap(SeriesPlan::id, Function.identity()));
    }

    private static List<SeriesPlan> plans(Map<String, Set> values) throws SettingsException {
        List<SeriesPlan> all = new ArrayList<>(SeriesPlans.standard().all());
        if (values.containsKey("plans")) {
            Set own = values.get("plans");
            try {
                all.addAll(PlanFile.read(own.file(), grammar(values)));
            } catch (PlanFile.PlanException | GrammarException e) {
                throw new SettingsException(own.where() + " cannot be used: " + e.getMessage());
            }
        }
        return List.copyOf(all);
    }

    private static SpokenGrammar grammar(Map<String, Set> values) throws SettingsException, GrammarException {
        return values.containsKey("grammar")
                ? SpokenGrammar.named(values.get("grammar").grammar())
                : SpokenGrammar.standard();
    }

    private static Optional<Path> file(Map<String, Set> values, String key) throws SettingsException {
        return values.containsKey(key) ? Optional.of(values.get(key).file()) : Optional.empty();
    }

    private static Answers answers(Map<String, Set> values) throws SettingsException {
        Answers usual = Answers.DEFAULTS;
        return new Answers(
                one(values, "answers", LEVELS),
                values.containsKey("pace") ? values.get("pace").pace() : usual.pace(),
                one(values, "voice", VOICES).orElse(usual.voice()),
                text(values, "speaker").orElse(usual.output()));
    }

    private static Optional<String> text(Map<String, Set> values, String key) {
        return Optional.ofNullable(values.get(key)).map(Set::value);
    }

    private static <T> Optional<T> one(Map<String, Set> values, String key, Map<String, T> allowed)
            throws SettingsException {
        return values.containsKey(key) ? Optional.of(values.get(key).oneOf(allowed)) : Optional.empty();
    }
}
