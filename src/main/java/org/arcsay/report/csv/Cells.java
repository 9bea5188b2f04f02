package org.arcsay.report.csv;

import java.math.BigDecimal;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import org.arcsay.model.Finding;
import org.arcsay.model.Finding.LabelledNumber;
import org.arcsay.model.Remark;
import org.arcsay.model.Remark.Feel;
import org.arcsay.model.Remark.Note;
import org.arcsay.model.Remark.Pain;
import org.arcsay.model.Remark.PainPlace;
import org.arcsay.model.Remark.Quality;
import org.arcsay.model.Severity;
import org.arcsay.model.Value;
import org.arcsay.report.content.ValueParts;

/**
 * Lists that stand in one cell, one item a line.
 *
 * <p>A remark is {@code pain:at_end_range:4}, {@code feel:stiff} or {@code note:free text}. A finding is
 * {@code rule|severity|sentence|numbers|alternative}, its numbers {@code label=number=unit} separated by semicolons.
 */
final class Cells {
    private Cells() {}

    static String remarks(List<Remark> remarks) {
        return Packing.join('\n', remarks.stream().map(Cells::remark).toList());
    }

    static List<Remark> remarks(String cell) {
        return cell.isEmpty()
                ? List.of()
                : Packing.split('\n', cell).stream().map(Cells::remark).toList();
    }

    static String findings(List<Finding> findings) {
        return Packing.join('\n', findings.stream().map(Cells::finding).toList());
    }

    static List<Finding> findings(String cell) {
        return cell.isEmpty()
                ? List.of()
                : Packing.split('\n', cell).stream().map(Cells::finding).toList();
    }

    private static String remark(Remark remark) {
        if (remark instanceof Pain pain) {
            String place = "pain:" + ValueParts.lower(pain.place());
            return pain.score().isPresent() ? place + ":" + pain.score().getAsInt() : place;
        }
        if (remark instanceof Quality quality) {
            return "feel:" + ValueParts.lower(quality.feel());
        }
        return "note:" + ((Note) remark).text();
    }

    private static Remark remark(String text) {
        int colon = text.indexOf(':');
        String rest = text.substring(colon + 1);
        return switch (colon < 0 ? "" : text.substring(0, colon)) {
            case "pain" -> pain(rest);
            case "feel" -> new Quality(ValueParts.code(Feel.class, rest, "feel"));
            case "note" -> new Note(rest);
            default ->
                throw new IllegalArgumentException(
                        "'" + text + "' is not a remark: it must begin with pain:, feel: or note:");
        };
    }

    private static Pain pain(String text) {
        int colon = text.indexOf(':');
        String place = colon < 0 ? text : text.substring(0, colon);
        OptionalInt score = colon < 0 ? OptionalInt.empty() : OptionalInt.of(wholeNumber(text.substring(colon + 1)));
        return new Pain(ValueParts.code(PainPlace.class, place, "pain"), score);
    }

    private static String finding(Finding finding) {
        List<String> numbers = finding.numbers().stream()
                .map(n -> Packing.join('=', List.of(n.label(), n.number(), n.unit())))
                .toList();
        return Packing.join(
                '|',
                List.of(
                        finding.rule(),
                        ValueParts.lower(finding.severity()),
                        finding.sentence(),
                        Packing.join(';', numbers),
                        finding.alternative().map(Cells::value).orElse("")));
    }

    private static Finding finding(String text) {
        List<String> parts = Packing.split('|', text);
        if (parts.size() != 5) {
            throw new IllegalArgumentException("'" + text + "' is not a finding: it needs five parts separated by |");
        }
        return new Finding(
                parts.get(0),
                ValueParts.code(Severity.class, parts.get(1), "severity"),
                parts.get(2),
                numbers(parts.get(3)),
                parts.get(4).isEmpty() ? Optional.empty() : Optional.of(value(parts.get(4))));
    }

    private static List<LabelledNumber> numbers(String text) {
        return text.isEmpty()
                ? List.of()
                : Packing.split(';', text).stream().map(Cells::number).toList();
    }

    private static LabelledNumber number(String text) {
        List<String> parts = Packing.split('=', text);
        if (parts.size() != 3) {
            throw new IllegalArgumentException("'" + text + "' is not a number of a finding: write label=number=unit");
        }
        return new LabelledNumber(parts.get(0), parts.get(1), parts.get(2));
    }

    private static String value(Value value) {
        ValueParts parts = ValueParts.of(value);
        String number = parts.number().map(BigDecimal::toPlainString).orElse("");
        return Packing.join(' ', List.of(ValueParts.code(parts.kind()), number, parts.unit(), parts.detail()));
    }

    private static Value value(String text) {
        List<String> parts = Packing.split(' ', text);
        if (parts.size() != 4) {
            throw new IllegalArgumentException("'" + text + "' is not a value: it needs kind, number, unit and detail");
        }
        return value(parts.get(0), parts.get(1), parts.get(2), parts.get(3));
    }

    /** The value of a row or of a finding's alternative. */
    static Value value(String kind, String number, String unit, String detail) {
        return new ValueParts(
                        ValueParts.kind(kind),
                        number.isEmpty() ? Optional.empty() : Optional.of(decimal(number)),
                        unit,
                        detail)
                .toValue();
    }

    static BigDecimal decimal(String text) {
        if (!text.matches("[0-9]{1,9}(\\.[0-9]{1,40})?")) {
            throw new IllegalArgumentException(
                    "'" + text + "' is not an unsigned number with a decimal point, such as 7.5");
        }
        return new BigDecimal(text);
    }

    static int wholeNumber(String text) {
        if (!text.matches("[0-9]{1,9}")) {
            throw new IllegalArgumentException("'" + text + "' is not a whole number");
        }
        return Integer.parseInt(text);
    }
}
