package org.arcsay.parser;

import java.math.BigDecimal;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import org.arcsay.grammar.Tag;
import org.arcsay.model.LengthUnit;
import org.arcsay.model.Measure;
import org.arcsay.model.Mode;
import org.arcsay.model.Motion;
import org.arcsay.model.Placement;
import org.arcsay.model.Remark;
import org.arcsay.model.Side;
import org.arcsay.model.Site;
import org.arcsay.model.Sites;
import org.arcsay.model.Value;
import org.arcsay.model.Value.NotTestedReason;
import org.arcsay.parser.Command.ControlWord;

/** Turns the tags of one meaning into a command. */
final class Interpreter {
    private static final String IMPLIED_FLEXION = "IMPLIED_FLEXION";
    private static final String RANGE = "RANGE";
    private static final String NOT_TESTED = "NOT_TESTED";

    private Interpreter() {}

    /**
     * @throws IllegalArgumentException when a number cannot exist for what is measured
     */
    static Command interpret(List<Tag> meaning) {
        TagReader tags = new TagReader(meaning);
        return switch (tags.required("act")) {
            case "READING" -> new Command.Dictated(who(tags), readings(tags), isCorrection(tags));
            case "SUBJECT" -> named(tags);
            case "LOOSE" -> loose(tags);
            case "CORRECT_CONTEXT" -> new Command.CorrectContext(who(tags));
            case "CONTEXT" -> context(tags);
            case "REMARK" -> new Command.AddRemark(remark(tags));
            case "SKIP" -> new Command.Skip(NotTestedReason.valueOf(tags.required("reason")));
            case "YES" -> new Command.Yes();
            case "NO" -> new Command.No(tags.numbers().isEmpty() ? Optional.empty() : Optional.of(number(tags)));
            case "KIND" -> new Command.KindNamed(SpokenKind.valueOf(tags.required("kind")));
            default -> new Command.Control(ControlWord.valueOf(tags.required("act")));
        };
    }

    private static boolean isCorrection(TagReader tags) {
        return tags.text("correct").isPresent();
    }

    private static Who who(TagReader tags) {
        return new Who(
                tags.value("side", Side::valueOf),
                tags.value("mode", Mode::valueOf),
                tags.value("placement", Placement::valueOf));
    }

    private static Command context(TagReader tags) {
        return tags.text("side").filter("OTHER"::equals).isPresent()
                ? new Command.OtherHand()
                : new Command.SetContext(who(tags));
    }

    private static List<SpokenReading> readings(TagReader tags) {
        if (tags.required("motion").equals(Motion.OPPOSITION_GAP.name())) {
            return tags.partsFrom("site").stream().map(Interpreter::reading).toList();
        }
        return tags.required("motion").equals(RANGE) ? range(tags) : List.of(reading(tags));
    }

    private static List<SpokenReading> range(TagReader tags) {
        List<BigDecimal> numbers = tags.numbers();
        return SpokenReading.arc(new Site(tags.required("site")), numbers.get(0), numbers.get(1));
    }

    private static SpokenReading reading(TagReader tags) {
        Measure measure = measure(tags);
        return new SpokenReading(measure, spokenValue(measure, tags), impliesFlexion(tags));
    }

    private static boolean impliesFlexion(TagReader tags) {
        return tags.required("motion").equals(IMPLIED_FLEXION);
    }

    private static Measure measure(TagReader tags) {
        Motion motion = impliesFlexion(tags) ? Motion.FLEXION : Motion.valueOf(tags.required("motion"));
        return new Measure(new Site(tags.required("site")), motion);
    }

    private static SpokenValue spokenValue(Measure measure, TagReader tags) {
        Optional<String> words = tags.text("value");
        if (words.isPresent()) {
            return new SpokenValue.Exact(valueInWords(words.get(), tags));
        }
        return switch (measure.dimension()) {
            case ANGLE -> new SpokenValue.Exact(new Value.Angle(tags.number()));
            case EXTENSION -> extension(measure.site(), tags);
            case GAP, SPAN -> new SpokenValue.Length(tags.number(), tags.value("unit", LengthUnit::valueOf));
            case SCORE -> new SpokenValue.Exact(new Value.Score(tags.number().intValueExact()));
        };
    }

    private static Value valueInWords(String words, TagReader tags) {
        if (words.equals(NOT_TESTED)) {
            return new Value.NotTested(
                    tags.value("reason", NotTestedReason::valueOf).orElse(NotTestedReason.UNSTATED));
        }
        return new Value.Unquantified(Value.Phrase.valueOf(words));
    }

    private static SpokenValue extension(Site site, TagReader tags) {
        Optional<SpokenKind> kind = tags.value("kind", SpokenKind::valueOf);
        if (kind.isEmpty() && Sites.standard().info(site).naturalExtension()) {
            return new SpokenValue.Exact(new Value.Angle(tags.number()));
        }
        BigDecimal degrees = tags.numbers().isEmpty() ? BigDecimal.ZERO : tags.number();
        SpokenKind said = kind.orElse(SpokenKind.BARE);
        return new SpokenValue.Extension(degrees.signum() == 0 ? SpokenKind.NEUTRAL : said, degrees);
    }

    private static Command named(TagReader tags) {
        Optional<SpokenKind> kind = tags.value("kind", SpokenKind::valueOf);
        return new Command.Named(who(tags), measure(tags), kind, impliesFlexion(tags));
    }

    private static Command loose(TagReader tags) {
        if (tags.text("motion").filter(RANGE::equals).isPresent()) {
            List<BigDecimal> numbers = tags.numbers();
            return new Command.Arc(numbers.get(0), numbers.get(1), isCorrection(tags));
        }
        return number(tags);
    }

    private static Command.Number number(TagReader tags) {
        return new Command.Number(
                tags.number(),
                tags.value("unit", LengthUnit::valueOf),
                tags.value("kind", SpokenKind::valueOf),
                isCorrection(tags));
    }

    private static Remark remark(TagReader tags) {
        Optional<Remark> feel = tags.value("feel", name -> new Remark.Quality(Remark.Feel.valueOf(name)));
        return feel.orElseGet(() -> new Remark.Pain(
                Remark.PainPlace.valueOf(tags.required("pain")),
                tags.numbers().isEmpty()
                        ? OptionalInt.empty()
                        : OptionalInt.of(tags.number().intValueExact())));
    }
}
