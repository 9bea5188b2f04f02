package org.arcsay.review;

import java.math.BigDecimal;
import java.util.Arrays;
import java.util.Locale;
import java.util.Optional;
import java.util.function.Function;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.arcsay.model.ClinicSettings;
import org.arcsay.model.Distance;
import org.arcsay.model.LengthUnit;
import org.arcsay.model.Measure;
import org.arcsay.model.SignConvention;
import org.arcsay.model.Sites;
import org.arcsay.model.Value;
import org.arcsay.model.Value.Angle;
import org.arcsay.model.Value.Extension;
import org.arcsay.model.Value.ExtensionKind;
import org.arcsay.model.Value.Gap;
import org.arcsay.model.Value.NotTested;
import org.arcsay.model.Value.NotTestedReason;
import org.arcsay.model.Value.Phrase;
import org.arcsay.model.Value.Score;
import org.arcsay.model.Value.Span;
import org.arcsay.model.Value.Unquantified;

/** Values as they are typed: "75", "lacks 10", "38 mm", "touches", "not tested: pain". Nothing is ever guessed. */
public final class TypedValue {
    private static final String NUMBER = "(\\d{1,6}(?:\\.\\d{1,2})?)";
    private static final Pattern DEGREES = Pattern.compile(NUMBER + " ?(?:d|deg|degree|degrees)?");
    private static final Pattern LENGTH = Pattern.compile(NUMBER + " ?([a-z\"]+)?");
    private static final Pattern POINTS = Pattern.compile("(\\d{1,2}) ?(?:(?:/|of|out of) ?10|points?)?");
    private static final Pattern NOT_TESTED =
            Pattern.compile("(?:not tested|not measured)(?:[:,]? ?(?:because of )?(.+))?");
    private static final Pattern DEFICIT_FIRST =
            Pattern.compile("(?:lacks|lacking|lack|deficit|lag|minus lag) (?:of )?" + DEGREES.pattern());
    private static final Pattern DEFICIT_LAST = Pattern.compile(DEGREES.pattern() + " ?(?:deficit|lag|lacking)");
    private static final Pattern HYPER_FIRST =
            Pattern.compile("(?:hyper|hyperextends|hyperextension) (?:of |by )?" + DEGREES.pattern());
    private static final Pattern HYPER_LAST = Pattern.compile(DEGREES.pattern() + " ?(?:hyper|hyperextension)");
    private static final Pattern SIGNED = Pattern.compile("(-|\\+|minus |plus ) ?" + DEGREES.pattern());

    private final Measure measure;
    private final ClinicSettings settings;

    private TypedValue(Measure measure, ClinicSettings settings) {
        this.measure = measure;
        this.settings = settings;
    }

    /** A typed text as it was read. */
    public sealed interface Result {
        /** It has exactly one meaning. */
        record Understood(Value value) implements Result {}

        /** It has none, or more than one; the message says what to type instead. */
        record NotUnderstood(String message) implements Result {}
    }

    /**
     * Reads a typed value.
     *
     * @param text what was typed; letter case, extra spaces, a degree sign and a decimal comma do not matter
     * @param measure decides which kinds of value are possible
     * @param settings the unit of a length without one, and the meaning of a bare minus or plus
     */
    public static Result read(String text, Measure measure, ClinicSettings settings) {
        String plain = plain(text);
        if (plain.isEmpty()) {
            return not("Type a value, for example " + example(measure) + ".");
        }
        try {
            return new TypedValue(measure, settings).read(plain);
        } catch (IllegalArgumentException outOfRange) {
            return not(Sentences.capital(String.valueOf(outOfRange.getMessage())) + ".");
        }
    }

    /** The text that {@link #read} understands as this value. */
    public static String text(Value value) {
        if (value instanceof Angle angle) {
            return angle.degrees().toPlainString();
        }
        if (value instanceof Extension extension) {
            return text(extension);
        }
        if (value instanceof Gap gap) {
            return gap.distance().toString();
        }
        if (value instanceof Score score) {
            return String.valueOf(score.points());
        }
        if (value instanceof Unquantified unquantified) {
            return unquantified.phrase().words();
        }
        return value.words();
    }

    /** A text that would be understood for this measure, in quotation marks. */
    public static String example(Measure measure) {
        return switch (measure.dimension()) {
            case ANGLE -> "'75'";
            case EXTENSION -> "'lacks 10', 'neutral' or 'hyper 10'";
            case GAP -> "'38 mm', '3.8 cm' or 'touches'";
            case SPAN -> "'45 mm' or '4.5 cm'";
            case SCORE -> "'7', a whole number from 0 to 10";
        };
    }

    private static String text(Extension extension) {
        String degrees = extension.degrees().toPlainString();
        return switch (extension.kind()) {
            case DEFICIT -> "lacks " + degrees;
            case NEUTRAL -> "neutral";
            case HYPEREXTENSION -> "hyper " + degrees;
        };
    }

    private static String plain(String text) {
        return text.toLowerCase(Locale.ROOT)
                .replace("\u00b0", " degrees")
                .replace('\u2212', '-')
                .replace('\u2013', '-')
                .replaceAll("(\\d),(\\d{1,2})(?!\\d)", "$1.$2")
                .replaceAll("\\s+", " ")
                .strip();
    }

    private Result read(String plain) {
        return wordsOnly(plain).orElseGet(() -> switch (measure.dimension()) {
            case ANGLE -> angle(plain);
            case EXTENSION -> extension(plain);
            case GAP -> gap(plain);
            case SPAN -> length(plain, Span::new);
            case SCORE -> score(plain);
        });
    }

    private static Optional<Result> wordsOnly(String plain) {
        for (Phrase phrase : Phrase.values()) {
            if (plain.equals(phrase.words())) {
                return Optional.of(understood(new Unquantified(phrase)));
            }
        }
        if (plain.equals("unable")) {
            return Optional.of(understood(new NotTested(NotTestedReason.UNABLE)));
        }
        Matcher matcher = NOT_TESTED.matcher(plain);
        return matcher.matches() ? Optional.of(notTested(matcher.group(1))) : Optional.empty();
    }

    private static Result notTested(String reason) {
        if (reason == null) {
            return understood(new NotTested(NotTestedReason.UNSTATED));
        }
        return Arrays.stream(NotTestedReason.values())
                .filter(known ->
                        known != NotTestedReason.UNSTATED && known.words().equals(reason))
                .findFirst()
                .map(known -> understood(new NotTested(known)))
                .orElseGet(() -> not("'" + reason + "' is not one of the reasons: " + reasons() + "."));
    }

    private static String reasons() {
        return Arrays.stream(NotTestedReason.values())
                .filter(known -> known != NotTestedReason.UNSTATED)
                .map(NotTestedReason::words)
                .collect(Collectors.joining(", "));
    }

    private Result angle(String plain) {
        Matcher degrees = DEGREES.matcher(plain);
        if (degrees.matches()) {
            return understood(Angle.of(degrees.group(1)));
        }
        if (SIGNED.matcher(plain).matches()) {
            return not(measure.words() + " has no sign. Type the degrees alone, for example '75'; "
                    + "what is missing to straight belongs to extension.");
        }
        if (plain.equals("neutral")) {
            return not("For " + measure.words() + " type the degrees, for example '0'.");
        }
        return isLength(plain) ? wrongUnit("degrees", plain) : notAValue(plain);
    }

    private Result extension(String plain) {
        if (plain.equals("neutral") || plain.equals("straight")) {
            return understood(Extension.neutral());
        }
        Optional<Result> kind = kind(plain, ExtensionKind.DEFICIT, DEFICIT_FIRST, DEFICIT_LAST)
                .or(() -> kind(plain, ExtensionKind.HYPEREXTENSION, HYPER_FIRST, HYPER_LAST));
        if (kind.isPresent()) {
            return kind.get();
        }
        Matcher signed = SIGNED.matcher(plain);
        if (signed.matches()) {
            return signed(signed.group(1).strip(), new BigDecimal(signed.group(2)));
        }
        Matcher degrees = DEGREES.matcher(plain);
        if (degrees.matches()) {
            return bareExtension(degrees.group(1));
        }
        return isLength(plain) ? wrongUnit("degrees", plain) : notAValue(plain);
    }

    private static Optional<Result> kind(String plain, ExtensionKind kind, Pattern... forms) {
        return Arrays.stream(forms)
                .map(form -> form.matcher(plain))
                .filter(Matcher::matches)
                .findFirst()
                .map(matcher -> understood(new Extension(kind, new BigDecimal(matcher.group(1)))));
    }

    private Result signed(String sign, BigDecimal degrees) {
        if (degrees.signum() == 0) {
            return understood(Extension.neutral());
        }
        if (settings.signConvention() == SignConvention.UNSET) {
            return not("Plus and minus mean opposite things in different clinics. Type 'lacks "
                    + degrees.toPlainString() + "' or 'hyper " + degrees.toPlainString() + "'.");
        }
        boolean minus = sign.equals("-") || sign.equals("minus");
        boolean minusIsDeficit = settings.signConvention() == SignConvention.MINUS_IS_DEFICIT;
        return understood(
                new Extension(minus == minusIsDeficit ? ExtensionKind.DEFICIT : ExtensionKind.HYPEREXTENSION, degrees));
    }

    private Result bareExtension(String degrees) {
        if (new BigDecimal(degrees).signum() == 0) {
            return understood(Extension.neutral());
        }
        if (extendsNaturally()) {
            return understood(Angle.of(degrees));
        }
        return not("Say on which side of neutral: type 'lacks " + degrees + "' or 'hyper " + degrees + "'.");
    }

    private boolean extendsNaturally() {
        Sites sites = Sites.standard();
        return sites.knows(measure.site()) && sites.info(measure.site()).naturalExtension();
    }

    private Result gap(String plain) {
        if (plain.equals("touches") || plain.equals("touching")) {
            return understood(new Gap(new Distance(BigDecimal.ZERO, settings.lengthUnit())));
        }
        return length(plain, Gap::new);
    }

    private Result length(String plain, Function<Distance, Value> kind) {
        Matcher length = LENGTH.matcher(plain);
        if (!length.matches()) {
            return SIGNED.matcher(plain).matches()
                    ? not("A distance has no sign. Type " + example(measure) + ".")
                    : notAValue(plain);
        }
        String unit = length.group(2);
        if (unit == null) {
            return understood(kind.apply(Distance.of(length.group(1), settings.lengthUnit())));
        }
        return unit(unit)
                .map(known -> understood(kind.apply(Distance.of(length.group(1), known))))
                .orElseGet(() -> wrongUnit("mm, cm or in", plain));
    }

    private static Optional<LengthUnit> unit(String word) {
        return Optional.ofNullable(
                switch (word) {
                    case "mm", "millimetre", "millimetres", "millimeter", "millimeters" -> LengthUnit.MILLIMETRE;
                    case "cm", "centimetre", "centimetres", "centimeter", "centimeters" -> LengthUnit.CENTIMETRE;
                    case "in", "inch", "inches", "\"" -> LengthUnit.INCH;
                    default -> null;
                });
    }

    private static boolean isLength(String plain) {
        Matcher length = LENGTH.matcher(plain);
        return length.matches()
                && length.group(2) != null
                && unit(length.group(2)).isPresent();
    }

    private Result score(String plain) {
        Matcher points = POINTS.matcher(plain);
        return points.matches() ? understood(new Score(Integer.parseInt(points.group(1)))) : notAValue(plain);
    }

    private Result wrongUnit(String right, String plain) {
        return not(Sentences.capital(measure.words()) + " is measured in " + right + "; '" + plain + "' is not. Type "
                + example(measure) + ".");
    }

    private Result notAValue(String plain) {
        return not("'" + plain + "' is not a value for " + measure.words() + ". Type " + example(measure) + ".");
    }

    private static Result understood(Value value) {
        return new Result.Understood(value);
    }

    private static Result not(String message) {
        return new Result.NotUnderstood(message);
    }
}
