package org.arcsay.analysis;

import java.math.BigDecimal;
import java.util.Arrays;
import java.util.List;
import org.arcsay.model.Value.Angle;
import org.arcsay.model.Value.Extension;
import org.arcsay.model.Value.ExtensionKind;

/**
 * A way to write an {@link Arc}. Every way can be read back; none uses a minus sign.
 *
 * <p>The neutral-zero method writes three numbers (Cave and Roberts 1936; AAOS 1965); no standard fixes their order, so the
 * order is part of the notation and belongs beside the numbers.
 */
public enum Notation {
    /** "lacks 10 degrees, flexes to 75 degrees". */
    PLAIN_WORDS("plain words") {
        @Override
        public String print(Arc arc) {
            return arc.extension().words() + ", flexes to " + arc.flexion().words();
        }

        @Override
        Arc read(String text) {
            return PlainWords.read(text);
        }
    },
    /** Start and end: "10-75" lacks 10, "0-80" is neutral, "15-0-80" hyperextends 15 first. */
    TWO_NUMBERS("two-number arc") {
        @Override
        public String print(Arc arc) {
            Extension extension = arc.extension();
            String start = plain(extension.degrees());
            boolean beyond = extension.kind() == ExtensionKind.HYPEREXTENSION;
            return start + (beyond ? "-0-" : "-") + plain(arc.flexion().degrees());
        }

        @Override
        Arc read(String text) {
            List<BigDecimal> numbers = numbers(text);
            if (numbers.size() == 2) {
                return new Arc(new Extension(ExtensionKind.DEFICIT, numbers.get(0)), new Angle(numbers.get(1)));
            }
            require(
                    numbers.size() == 3 && numbers.get(1).signum() == 0,
                    "expected start-end, or hyperextension-0-flexion");
            return new Arc(new Extension(ExtensionKind.HYPEREXTENSION, numbers.get(0)), new Angle(numbers.get(2)));
        }
    },
    /** Neutral-zero with extension first: "0-10-75" lacks 10, "15-0-80" hyperextends 15. */
    NEUTRAL_ZERO_EXTENSION_FIRST("neutral-zero, extension/flexion") {
        @Override
        public String print(Arc arc) {
            return arc.extension().kind() == ExtensionKind.DEFICIT
                    ? "0-" + plain(arc.extension().degrees()) + "-"
                            + plain(arc.flexion().degrees())
                    : plain(arc.extension().degrees()) + "-0-"
                            + plain(arc.flexion().degrees());
        }

        @Override
        Arc read(String text) {
            List<BigDecimal> numbers = numbers(text);
            require(numbers.size() == 3, "expected three numbers");
            return neutralZero(numbers.get(0), numbers.get(1), numbers.get(2));
        }
    },
    /** Neutral-zero with flexion first: "75-10-0" lacks 10, "80-0-15" hyperextends 15. */
    NEUTRAL_ZERO_FLEXION_FIRST("neutral-zero, flexion/extension") {
        @Override
        public String print(Arc arc) {
            return arc.extension().kind() == ExtensionKind.DEFICIT
                    ? plain(arc.flexion().degrees()) + "-"
                            + plain(arc.extension().degrees()) + "-0"
                    : plain(arc.flexion().degrees()) + "-0-"
                            + plain(arc.extension().degrees());
        }

        @Override
        Arc read(String text) {
            List<BigDecimal> numbers = numbers(text);
            require(numbers.size() == 3, "expected three numbers");
            return neutralZero(numbers.get(2), numbers.get(1), numbers.get(0));
        }
    };

    private final String title;

    Notation(String title) {
        this.title = title;
    }

    /** For legends, such as "neutral-zero, flexion/extension". */
    public String title() {
        return title;
    }

    public abstract String print(Arc arc);

    abstract Arc read(String text);

    /**
     * The reverse of {@link #print(Arc)}.
     *
     * @throws IllegalArgumentException when the text is not in this notation, with what was expected
     */
    public Arc parse(String text) {
        try {
            return read(text.strip());
        } catch (IllegalArgumentException e) {
            throw new IllegalArgumentException("'" + text + "' is no " + title + ": " + e.getMessage(), e);
        }
    }

    static String plain(BigDecimal number) {
        return number.toPlainString();
    }

    static List<BigDecimal> numbers(String text) {
        return Arrays.stream(text.split("-", -1)).map(Notation::number).toList();
    }

    static BigDecimal number(String text) {
        require(text.strip().matches("\\d+(\\.\\d+)?"), "'" + text + "' is no number of degrees");
        return new BigDecimal(text.strip());
    }

    static void require(boolean condition, String message) {
        if (!condition) {
            throw new IllegalArgumentException(message);
        }
    }

    private static Arc neutralZero(BigDecimal extension, BigDecimal middle, BigDecimal flexion) {
        if (middle.signum() == 0) {
            return new Arc(new Extension(ExtensionKind.HYPEREXTENSION, extension), new Angle(flexion));
        }
        require(flexion.signum() > 0, "a joint that stays beyond neutral cannot be written with flexion and extension");
        require(extension.signum() == 0, "a joint that does not reach neutral has 0 in the place of extension");
        return new Arc(new Extension(ExtensionKind.DEFICIT, middle), new Angle(flexion));
    }
}
