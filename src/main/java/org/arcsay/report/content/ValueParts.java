package org.arcsay.report.content;

import java.math.BigDecimal;
import java.util.Arrays;
import java.util.Locale;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.arcsay.model.Distance;
import org.arcsay.model.LengthUnit;
import org.arcsay.model.Value;
import org.arcsay.model.Value.NotTestedReason;
import org.arcsay.model.Value.Phrase;
import org.arcsay.model.ValueForm;
import org.arcsay.model.ValueForm.Kind;

/**
 * A value taken apart for exchange: the direction is a kind and never a sign.
 *
 * @param kind what sort of value it is
 * @param number the unsigned number, absent when there is none
 * @param unit "deg", "mm", "cm", "in", or "" where there is no unit
 * @param detail the reason for not testing, or the phrase, in lower case with underscores; otherwise ""
 */
public record ValueParts(Kind kind, Optional<BigDecimal> number, String unit, String detail) {
    private static final String DEGREE = "deg";
    private static final String DESCRIBED = "described";

    public static ValueParts of(Value value) {
        ValueForm form = ValueForm.of(value);
        String unit = form.kind().isAngle()
                ? DEGREE
                : form.length().map(LengthUnit::symbol).orElse("");
        return new ValueParts(
                form.kind(),
                form.number(),
                unit,
                form.word().map(ValueParts::lower).orElse(""));
    }

    /** The code of a kind in exported files. */
    public static String code(Kind kind) {
        return kind == Kind.UNQUANTIFIED ? DESCRIBED : lower(kind);
    }

    /**
     * The kind with that code.
     *
     * @throws IllegalArgumentException when there is none; the message lists the possible ones
     */
    public static Kind kind(String code) {
        return named(Kind.class, ValueParts::code, code, "kind");
    }

    /**
     * The value that these parts make.
     *
     * @throws IllegalArgumentException when they do not fit together; the message says why
     */
    public Value toValue() {
        return form().value();
    }

    private ValueForm form() {
        return switch (kind) {
            case ANGLE -> ValueForm.number(kind, degrees());
            case DEFICIT, NEUTRAL, HYPEREXTENSION -> ValueForm.number(kind, extension());
            case GAP, SPAN -> ValueForm.length(kind, distance());
            case SCORE -> ValueForm.number(kind, points());
            case NOT_TESTED -> ValueForm.word(kind, code(NotTestedReason.class, detail, "detail"));
            case UNQUANTIFIED -> ValueForm.word(kind, code(Phrase.class, detail, "detail"));
        };
    }

    /**
     * Refuses a unit that does not belong to a kind.
     *
     * @throws IllegalArgumentException with the right units in the message
     */
    public static void requireUnit(Kind kind, String unit) {
        switch (kind) {
            case ANGLE, DEFICIT, NEUTRAL, HYPEREXTENSION -> require(unit.equals(DEGREE), unit, "an angle is in deg");
            case GAP, SPAN -> require(LengthUnit.withSymbol(unit).isPresent(), unit, "a length is in mm, cm or in");
            case SCORE, NOT_TESTED, UNQUANTIFIED ->
                require(unit.isEmpty(), unit, "kind " + code(kind) + " has no unit");
        }
    }

    private static void require(boolean fits, String unit, String rule) {
        if (!fits) {
            throw new IllegalArgumentException("unit is '" + unit + "', but " + rule);
        }
    }

    /**
     * The constant whose lower-case name this is.
     *
     * @throws IllegalArgumentException when there is none; the message lists the possible ones
     */
    public static <E extends Enum<E>> E code(Class<E> type, String text, String what) {
        return named(type, ValueParts::lower, text, what);
    }

    private static <E extends Enum<E>> E named(Class<E> type, Function<E, String> name, String text, String what) {
        return Arrays.stream(type.getEnumConstants())
                .filter(constant -> name.apply(constant).equals(text))
                .findFirst()
                .orElseThrow(() -> new IllegalArgumentException(what + " is '" + text + "', but must be one of "
                        + Arrays.stream(type.getEnumConstants()).map(name).collect(Collectors.joining(", "))));
    }

    /** The lower-case name of a constant, as exported files use it. */
    public static String lower(Enum<?> constant) {
        return lower(constant.name());
    }

    private static String lower(String name) {
        return name.toLowerCase(Locale.ROOT);
    }

    private BigDecimal extension() {
        BigDecimal degrees = degrees();
        if ((kind == Kind.NEUTRAL) != (degrees.signum() == 0)) {
            throw new IllegalArgumentException("kind " + code(kind) + " does not fit " + degrees.toPlainString()
                    + " degrees: 0 is neutral, and nothing else is");
        }
        return degrees;
    }

    private BigDecimal degrees() {
        requireUnit(kind, unit);
        return present();
    }

    private Distance distance() {
        requireUnit(kind, unit);
        return new Distance(present(), LengthUnit.withSymbol(unit).orElseThrow());
    }

    private BigDecimal points() {
        try {
            return BigDecimal.valueOf(present().intValueExact());
        } catch (ArithmeticException e) {
            throw new IllegalArgumentException("an opposition score is a whole number from 0 to 10", e);
        }
    }

    private BigDecimal present() {
        return number.orElseThrow(() -> new IllegalArgumentException("kind " + code(kind) + " needs a value"));
    }
}
