package org.arcsay.analysis;

import java.math.BigDecimal;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Stream;
import org.arcsay.model.Measure;
import org.arcsay.model.Mode;
import org.arcsay.tables.MeasurePattern;
import org.arcsay.tables.Row;
import org.arcsay.tables.Table;

/** The table of measurement error, {@code tables/measurement-error.tsv}; a clinic may use its own. */
public final class MeasurementError {
    private static final MeasurementError STANDARD = new MeasurementError(Table.shipped("measurement-error.tsv"));

    private final String name;
    private final List<Line> own;
    private final List<Line> fallback;
    private final String text;

    private MeasurementError(Table table) {
        this(table.name(), table.map(Line::read), List.of(), table.text());
    }

    private MeasurementError(String name, List<Line> own, List<Line> fallback, String text) {
        this.name = name;
        this.own = own;
        this.fallback = fallback;
        this.text = text;
    }

    /** The defaults shipped with the program. */
    public static MeasurementError standard() {
        return STANDARD;
    }

    /**
     * The figures of a clinic, which come before all shipped ones; where it has none, the shipped ones hold.
     *
     * @param name where they stand, for messages and reports
     * @throws org.arcsay.tables.TableException naming the line that cannot be used
     */
    public static MeasurementError read(String name, String text) {
        Table table = Table.read(name, text);
        return new MeasurementError(name, table.map(Line::read), STANDARD.own, text + STANDARD.text);
    }

    /** The figure that fits most closely, or nothing where none is known. */
    public Optional<ErrorFigure> of(Measure measure, Mode mode, Rater rater) {
        return closest(own, measure, mode, rater).or(() -> closest(fallback, measure, mode, rater));
    }

    private static Optional<ErrorFigure> closest(List<Line> lines, Measure measure, Mode mode, Rater rater) {
        return MeasurePattern.closest(
                        lines.stream().filter(line -> line.figure().rater() == rater), Line::pattern, measure, mode)
                .map(Line::figure);
    }

    /** All lines; those of a clinic first. */
    public List<Line> lines() {
        return Stream.concat(own.stream(), fallback.stream()).toList();
    }

    /** Whether a clinic has figures of its own. */
    public boolean isOwn() {
        return !fallback.isEmpty();
    }

    /** Where the figures stand. */
    public String name() {
        return name;
    }

    /** The whole table, for checksums. */
    public String text() {
        return text;
    }

    /**
     * One line of the table.
     *
     * @param pattern the measures and the mode it is about
     * @param figure what it says of them
     */
    public record Line(MeasurePattern pattern, ErrorFigure figure) {
        static Line read(Row row) {
            BigDecimal amount = row.number("amount");
            if (amount.signum() <= 0) {
                throw new IllegalArgumentException("'amount' must be above 0");
            }
            return new Line(MeasurePattern.read(row), figure(row, amount));
        }

        private static ErrorFigure figure(Row row, BigDecimal amount) {
            Rater rater = Rater.valueOf(row.text("rater").toUpperCase(Locale.ROOT));
            Amount.Scale scale = Amount.Scale.parse(row.text("unit"));
            return switch (row.text("basis")) {
                case "SEM" -> ErrorFigure.fromSem(amount, scale, rater, row.provenance());
                case "MDC95" -> ErrorFigure.fromMdc95(amount, scale, rater, row.provenance());
                default -> throw new IllegalArgumentException("'basis' must be SEM or MDC95");
            };
        }
    }
}
