package org.arcsay.store;

import java.math.BigDecimal;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.Optional;
import org.arcsay.model.LengthUnit;
import org.arcsay.model.Value;
import org.arcsay.model.ValueForm;
import org.arcsay.model.ValueForm.Kind;
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
    private static final String POINTS = "points";

    static ValueColumns of(Optional<Value> value) {
        return value.map(ValueColumns::of).orElse(NONE);
    }

    static ValueColumns of(Value value) {
        ValueForm form = ValueForm.of(value);
        return new ValueColumns(
                form.kind().name(),
                form.number().map(BigDecimal::toPlainString).orElse(null),
                unit(form),
                form.word().orElse(null));
    }

    private static @Nullable String unit(ValueForm form) {
        if (form.kind().isAngle()) {
            return DEGREES;
        }
        return form.kind() == Kind.SCORE
                ? POINTS
                : form.length().map(LengthUnit::symbol).orElse(null);
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
        Kind known = Kind.valueOf(String.valueOf(kind));
        return new ValueForm(
                        known,
                        Optional.ofNullable(amount).map(BigDecimal::new),
                        known.isLength() ? Optional.of(length()) : Optional.empty(),
                        Optional.ofNullable(word))
                .value();
    }

    private LengthUnit length() {
        return LengthUnit.withSymbol(String.valueOf(unit))
                .orElseThrow(() -> new IllegalArgumentException("no length in " + unit));
    }
}
