package org.arcsay.parser;

import java.math.BigDecimal;
import java.util.Optional;
import org.arcsay.model.LengthUnit;
import org.arcsay.model.Value;

/** A value as far as the words tell it; what is missing comes from the session or from a question, never from a guess. */
public sealed interface SpokenValue {
    /** Complete as said. */
    record Exact(Value value) implements SpokenValue {}

    /**
     * An extension in degrees, 0 to 180.
     *
     * @param kind how its direction was said
     */
    record Extension(SpokenKind kind, BigDecimal degrees) implements SpokenValue {}

    /**
     * A gap or a span.
     *
     * @param unit the unit, if said
     */
    record Length(BigDecimal amount, Optional<LengthUnit> unit) implements SpokenValue {}
}
