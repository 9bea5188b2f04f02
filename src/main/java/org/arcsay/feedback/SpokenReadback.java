package org.arcsay.feedback;

import static java.util.Map.entry;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.arcsay.model.Distance;
import org.arcsay.model.Measure;
import org.arcsay.model.Placement;
import org.arcsay.model.Reading;
import org.arcsay.model.Remark;
import org.arcsay.model.Slot;
import org.arcsay.model.Value;

/**
 * Words for what was understood, the number last because it is what goes wrong most.
 *
 * <p>Numbers are said digit by digit, so that seventeen and seventy cannot be taken for each other. A deficit and a
 * hyperextension are said in words and never as a sign.
 */
public final class SpokenReadback {
    private static final Map<String, String> CLIPS = Map.ofEntries(
            entry("IP", "i p"),
            entry("MP", "m p"),
            entry("CMC", "c m c"),
            entry("PIP", "p i p"),
            entry("DIP", "d i p"),
            entry("index tip", "index tip"),
            entry("middle tip", "middle tip"),
            entry("ring tip", "ring tip"),
            entry("little tip", "little tip"),
            entry("little base", "base of little"),
            entry("palm crease", "palm crease"));
    private static final List<String> DIGITS =
            List.of("zero", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine");

    private SpokenReadback() {}

    /**
     * Reads back a whole reading.
     *
     * @param before the slot of the reading before, so that a changed hand or mode is mentioned
     */
    public static Sentence of(Reading reading, List<Remark> remarks, FeedbackLevel level, Optional<Slot> before) {
        boolean full = level == FeedbackLevel.FULL;
        List<List<String>> phrases = new ArrayList<>();
        if (full || before.map(Slot::side).filter(reading.side()::equals).isEmpty()) {
            phrases.add(List.of(reading.side().word()));
        }
        if (full || before.map(Slot::mode).filter(reading.mode()::equals).isEmpty()) {
            phrases.add(List.of(reading.mode().word()));
        }
        phrases.addAll(full ? fully(reading.measure(), reading.value()) : shortly(reading.measure(), reading.value()));
        if (full && reading.placement() != Placement.UNSTATED) {
            phrases.add(List.of(reading.placement().word()));
        }
        remarks.forEach(remark -> phrases.add(remark(remark)));
        return new Sentence(phrases);
    }

    /** Names a slot with its hand and mode, such as "left, active, i p flexion". */
    public static Sentence slot(Slot slot) {
        return new Sentence(
                List.of(List.of(slot.side().word()), List.of(slot.mode().word()), measure(slot.measure())));
    }

    /** Names a measure as briefly as it can be told from the others. */
    public static List<String> measure(Measure measure) {
        return switch (measure.motion()) {
            case OPPOSITION_GAP -> site(measure);
            case OPPOSITION_SCORE -> List.of("opposition score");
            case WEB_SPAN -> List.of("web space");
            case RADIAL_ABDUCTION, PALMAR_ABDUCTION -> List.of(measure.motion().words());
            default -> motionAt(measure);
        };
    }

    /** A value alone, with its unit unless it is degrees, such as "lacks, one zero". */
    public static Sentence value(Value value) {
        return new Sentence(valuePhrases(value, false));
    }

    /** A whole number or decimal, digit by digit. */
    public static List<String> digits(BigDecimal number) {
        List<String> clips = new ArrayList<>();
        for (char c : number.toPlainString().toCharArray()) {
            clips.add(c == '.' ? "point" : DIGITS.get(c - '0'));
        }
        return clips;
    }

    private static List<List<String>> shortly(Measure measure, Value value) {
        List<List<String>> phrases = new ArrayList<>();
        if (value instanceof Value.Extension extension) {
            phrases.add(straightening(measure, extension));
            if (extension.degrees().signum() != 0) {
                phrases.add(digits(extension.degrees()));
            }
            return phrases;
        }
        phrases.add(measure(measure));
        phrases.addAll(valuePhrases(value, false));
        return phrases;
    }

    private static List<String> straightening(Measure measure, Value.Extension extension) {
        List<String> phrase = new ArrayList<>(site(measure));
        switch (extension.kind()) {
            case DEFICIT -> phrase.add("lacks");
            case NEUTRAL -> phrase.addAll(List.of("extension", "neutral"));
            case HYPEREXTENSION -> phrase.add("hyperextension");
        }
        return phrase;
    }

    private static List<List<String>> fully(Measure measure, Value value) {
        List<List<String>> phrases = new ArrayList<>();
        switch (measure.motion()) {
            case OPPOSITION_GAP -> {
                phrases.add(List.of("opposition"));
                phrases.add(site(measure));
            }
            case OPPOSITION_SCORE, WEB_SPAN -> phrases.add(measure(measure));
            default -> phrases.add(motionAt(measure));
        }
        phrases.addAll(valuePhrases(value, true));
        return phrases;
    }

    private static List<String> motionAt(Measure measure) {
        List<String> phrase = new ArrayList<>(site(measure));
        phrase.add(measure.motion().words());
        return phrase;
    }

    private static List<String> site(Measure measure) {
        String code = measure.site().code();
        if (CLIPS.containsKey(code)) {
            return List.of(CLIPS.get(code));
        }
        List<String> clips = new ArrayList<>();
        for (String word : code.split(" ")) {
            clips.add(CLIPS.getOrDefault(word, word));
        }
        return clips;
    }

    private static List<List<String>> valuePhrases(Value value, boolean degrees) {
        if (value instanceof Value.Angle angle) {
            return List.of(angle(angle.degrees(), degrees));
        }
        if (value instanceof Value.Extension extension) {
            return extension(extension, degrees);
        }
        if (value instanceof Value.Gap gap) {
            return List.of(gap.distance().amount().signum() == 0 ? List.of("touches") : distance(gap.distance()));
        }
        if (value instanceof Value.Span span) {
            return List.of(distance(span.distance()));
        }
        if (value instanceof Value.Score score) {
            return List.of(digits(BigDecimal.valueOf(score.points())));
        }
        if (value instanceof Value.NotTested not) {
            return not.reason() == Value.NotTestedReason.UNSTATED
                    ? List.of(List.of("not tested"))
                    : List.of(List.of("not tested"), List.of(not.reason().words()));
        }
        return List.of(List.of(((Value.Unquantified) value).phrase().words()));
    }

    private static List<List<String>> extension(Value.Extension extension, boolean degrees) {
        return switch (extension.kind()) {
            case DEFICIT -> List.of(List.of("deficit"), angle(extension.degrees(), degrees));
            case NEUTRAL -> List.of(List.of("neutral"));
            case HYPEREXTENSION -> List.of(List.of("hyperextension"), angle(extension.degrees(), degrees));
        };
    }

    private static List<String> angle(BigDecimal degrees, boolean unit) {
        List<String> clips = new ArrayList<>(digits(degrees));
        if (unit) {
            clips.add("degrees");
        }
        return clips;
    }

    private static List<String> distance(Distance distance) {
        List<String> clips = new ArrayList<>(digits(distance.amount()));
        clips.add(
                switch (distance.unit()) {
                    case MILLIMETRE -> "millimeters";
                    case CENTIMETRE -> "centimeters";
                    case INCH -> "inches";
                });
        return clips;
    }

    /** A remark in words; what was typed is only mentioned. */
    static List<String> remark(Remark remark) {
        if (remark instanceof Remark.Pain pain) {
            List<String> clips = new ArrayList<>(List.of(pain.place().words()));
            pain.score().ifPresent(score -> clips.addAll(digits(BigDecimal.valueOf(score))));
            return clips;
        }
        return List.of(remark instanceof Remark.Quality quality ? quality.feel().words() : "note");
    }
}
