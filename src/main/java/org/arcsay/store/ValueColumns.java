package org.arcsay.store;

import java.math.BigDecimal;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.Optional;
import org.arcsay.model.Distance;
import org.arcsay.model.LengthUnit;
import org.arcsay.model.Value;
import org.arcsay.model.Value.ExtensionKind;
import org.arcsay.model.Value.NotTestedReason;
import org.arcsay.model.Value.Phrase;
import org.jspecify.annotations.Nullable;

/**
 * A value as the four columns in which it is stored.
 *
 * @param kind which kind of value
 * @param amount the exact decimal, null where there is no number
 * @param unit "degrees", "mm", "cm", "in", "points", or null
 * @param word the reason or phrase that stands in place of a number, or null
 */
record ValueColumns(
        @Nullable String kind,
        @Nullable String amount,
        @Nullable String unit,
        @Nullable String word) {
    private static final ValueColumns NONE = new ValueColumns(null, null, null, null);
    private static final String DEGREES = "degrees";

    static ValueColumns of(Optional<Value> value) {
        return value.map(ValueColumns::of).orElse(NONE);
    }

    static ValueColumns of(Value value) {
        if (value instanceof Value.Angle angle) {
            return new ValueColumns("ANGLE", angle.degrees().toPlainString(), DEGREES, null);
        }
        if (value instanceof Value.Extension extension) {
            return new ValueColumns(extension.kind().name(), extension.degrees().toPlainString(), DEGREES, null);
        }
        if (value instanceof Value.Gap gap) {
            return of("GAP", gap.distance());
        }
        if (value instanceof Value.Span span) {
            return of("SPAN", span.distance());
        }
        if (value instanceof Value.Score score) {
            return new ValueColumns("SCORE", String.valueOf(score.points()), "points", null);
        }
        if (value instanceof Value.NotTested notTested) {
            return new ValueColumns("NOT_TESTED", null, null, notTested.reason().name());
        }
        Value.Unquantified unquantified = (Value.Unquantified) value;
        return new ValueColumns(
                "UNQUANTIFIED", null, null, unquantified.phrase().name());
    }

    private static ValueColumns of(String kind, Distance distance) {
        return new ValueColumns(
                kind, distance.amount().toPlainString(), distance.unit().symbol(), null);
    }

    static ValueColumns read(ResultSet row) throws SQLException {
        return new ValueColumns(
                row.getString("value_kind"), row.getString("amount"), row.getString("unit"), row.getString("word"));
    }

    /** Sets four parameters from the given index on. */
    void write(PreparedStatement statement, int index) throws SQLException {
        statement.setString(index, kind);
        statement.setString(index + 1, amount);
        statement.setString(index + 2, unit);
        statement.setString(index + 3, word);
    }

    Optional<Value> optional() {
        return kind == null ? Optional.empty() : Optional.of(value());
    }

    /**
     * @throws IllegalArgumentException when the columns make no value
     */
    Value value() {
        return switch (String.valueOf(kind)) {
            case "ANGLE" -> new Value.Angle(number());
            case "DEFICIT", "NEUTRAL", "HYPEREXTENSION" ->
                new Value.Extension(ExtensionKind.valueOf(String.valueOf(kind)), number());
            case "GAP" -> new Value.Gap(distance());
            case "SPAN" -> new Value.Span(distance());
            case "SCORE" -> new Value.Score(number().intValueExact());
            case "NOT_TESTED" -> new Value.NotTested(NotTestedReason.valueOf(String.valueOf(word)));
            case "UNQUANTIFIED" -> new Value.Unquantified(Phrase.valueOf(String.valueOf(word)));
            default -> throw new IllegalArgumentException("no value of kind " + kind);
        };
    }

    private BigDecimal number() {
        return new BigDecimal(amount);
    }

    private Distance distance() {
        LengthUnit known = LengthUnit.withSymbol(String.valueOf(unit))
                .orElseThrow(() -> new IllegalArgumentException("no length in " + unit));
        return new Distance(number(), known);
    }
}
