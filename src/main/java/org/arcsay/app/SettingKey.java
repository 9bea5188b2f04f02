package org.arcsay.app;

import java.util.Arrays;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import org.arcsay.analysis.NormSet;
import org.arcsay.analysis.NormSets;
import org.arcsay.app.Settings.Habits;
import org.arcsay.review.Appearance;

/** The keys of the settings file, with what they mean, for the file and for the screen. */
enum SettingKey {
    SIGN(
            "sign",
            "Spoken minus",
            "What \"minus ten\" means for extension. Both customs exist, so it is asked unless it is decided here.",
            values(
                    "ask", "Ask each time",
                    "minus-is-deficit", "Minus is a deficit: extension is not reached",
                    "minus-is-hyperextension", "Minus is hyperextension: extension goes beyond neutral")),
    UNIT(
            "unit",
            "Unit of distances",
            "Unit of opposition distances when none is said.",
            values("mm", "Millimetres", "cm", "Centimetres", "in", "Inches")),
    NORMS("norms", "Norm set", "The published norms that reports and comparisons show and name.", SettingKey::norms),
    NORM_FILE(
            "norm-file",
            "Own norm sets",
            "File with the clinic's own norm sets, in the form of \"arcsay tables norms\"; empty for none.",
            Map.of()),
    MEASUREMENT_ERROR(
            "measurement-error",
            "Own measurement error",
            "File with the clinic's own SEM or MDC per measure, in the form of \"arcsay tables measurement-error\"; its"
                    + " lines come before the built-in ones. Empty for the built-in ones alone.",
            Map.of()),
    RATER(
            "rater",
            "Who measures",
            "Whether the visits of a patient are measured by the same person; a change must be larger where they are not.",
            values("different", "Different persons may measure", "same", "Always the same person")),
    CONFIDENCE(
            "confidence",
            "Confidence of a change",
            "Confidence at which a change counts as beyond measurement error.",
            values("95", "95 % (MDC95)", "90", "90 % (MDC90)")),
    NOTATION(
            "notation",
            "Notation of joints",
            "How reports write the arc of a joint beside the single values.",
            values(
                    "words", "Plain words: lacks 10 degrees, flexes to 75 degrees",
                    "arc", "Two numbers: 10-75",
                    "neutral-zero-extension-first", "Neutral-zero, extension first: 0-10-75",
                    "neutral-zero-flexion-first", "Neutral-zero, flexion first: 75-10-0")),
    PLAN(
            "plan",
            "Series",
            "The series of measures that a visit is to complete unless another is chosen.",
            SettingKey::plans),
    PLANS(
            "plans",
            "Own series",
            "Text file with the clinic's own series; empty for none. See docs/guide.md.",
            Map.of()),
    ANSWERS(
            "answers",
            "Answers by sound",
            "How much is answered by sound while measuring.",
            values(
                    "short", "Short: the value, and what is unusual",
                    "full", "Full: everything that was understood",
                    "tones", "Tones only",
                    "off", "No sound")),
    PACE("pace", "Pace of spoken answers", "A number from 0.7 to 1.7; 1 is normal.", Map.of()),
    VOICE(
            "voice",
            "Voice",
            "Whose voice answers.",
            values("built-in", "Built in: recorded words", "system", "The operating system's voice")),
    SPEAKER(
            "speaker",
            "Sound output",
            "Name of the sound output for answers; empty for the system's choice.",
            Map.of()),
    MICROPHONE(
            "microphone",
            "Microphone",
            "Recording device; a part of its name is enough. Empty for the system's choice.",
            Map.of()),
    PAUSE(
            "pause",
            "Pause that ends a sentence",
            "How long to wait for more before answering. What follows after a pause still joins what was said before it.",
            values(
                    "short", "Short: answers soonest",
                    "medium", "Medium",
                    "long", "Long: for slow or hesitant speech")),
    KEEP_SOUND(
            "keep-sound",
            "Keep the sound of visits",
            "Sound of a visit is health data. It stays until \"arcsay purge-sound\" removes it. Tell the patient.",
            values("no", "No, nothing is kept", "yes", "Yes, with every visit")),
    MODEL("model", "Speech model", "Folder of another speech model; empty for the built-in one.", Map.of()),
    GRAMMAR("grammar", "Grammar", "File with the clinic's own grammar; empty for the built-in one.", Map.of()),
    LEXICON("lexicon", "Pronunciations", "File with pronunciations of own words; empty for none.", Map.of()),
    THEME(
            "theme",
            "Theme",
            "Changed in every window by Ctrl+D too. Holds from the next start on.",
            values("light", "Dark text on light ground", "dark", "Light text on dark ground")),
    TEXT_SIZE(
            "text-size",
            "Size of text, in percent",
            "Changed in every window by Ctrl+plus and Ctrl+minus too. Holds from the next start on.",
            sizes());

    private final String text;
    private final String title;
    private final String meaning;
    private final Function<Habits, Map<String, String>> allowed;

    SettingKey(String text, String title, String meaning, Map<String, String> allowed) {
        this(text, title, meaning, habits -> allowed);
    }

    SettingKey(String text, String title, String meaning, Function<Habits, Map<String, String>> allowed) {
        this.text = text;
        this.title = title;
        this.meaning = meaning;
        this.allowed = allowed;
    }

    /** The key as it stands in the file. */
    String text() {
        return text;
    }

    String title() {
        return title;
    }

    String meaning() {
        return meaning;
    }

    /** What every clinic can choose: values with their words, the usual one first; empty for free text. */
    Map<String, String> allowed() {
        return allowed(Habits.DEFAULTS);
    }

    /** The same with the clinic's own norm sets and series. */
    Map<String, String> allowed(Habits habits) {
        return allowed.apply(habits);
    }

    /** The value that holds when none is set; empty where that is none at all. */
    String usual() {
        return this == PACE ? "1" : allowed().keySet().stream().findFirst().orElse("");
    }

    static List<String> texts() {
        return Arrays.stream(values()).map(SettingKey::text).toList();
    }

    static Optional<SettingKey> named(String text) {
        return Arrays.stream(values()).filter(key -> key.text.equals(text)).findFirst();
    }

    private static Map<String, String> values(String... pairs) {
        Map<String, String> values = new LinkedHashMap<>();
        for (int i = 0; i < pairs.length; i += 2) {
            values.put(pairs[i], pairs[i + 1]);
        }
        return values;
    }

    /** Where two sets have one name, the first one holds, as it does when the file is read. */
    private static Map<String, String> norms(Habits habits) {
        String usual = NormSets.standard().usual().id();
        Map<String, String> norms = new LinkedHashMap<>();
        habits.normSets().stream()
                .sorted(Comparator.comparing((NormSet set) -> !set.id().equals(usual)))
                .forEach(set -> norms.putIfAbsent(set.id(), set.title()));
        return norms;
    }

    private static Map<String, String> sizes() {
        Map<String, String> sizes = new LinkedHashMap<>();
        Appearance.SIZES.forEach((Integer size) -> sizes.put(String.valueOf(size), size + " %"));
        return sizes;
    }

    private static Map<String, String> plans(Habits habits) {
        Map<String, String> plans = new LinkedHashMap<>();
        habits.plans().forEach(plan -> plans.put(plan.id(), plan.title()));
        return plans;
    }
}
