package org.arcsay.validate;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import org.arcsay.model.Distance;
import org.arcsay.model.Value;

/** Values that are easily heard or said for one another: thirteen and thirty, fifty-seven and seventy-five. */
final class SoundAlikes {
    private SoundAlikes() {}

    /** Every partner of a value, the teen/ty partner first. */
    static List<Value> partners(Value value) {
        List<Value> partners = new ArrayList<>();
        teenTy(value).ifPresent(partners::add);
        swapped(value).ifPresent(partners::add);
        return partners;
    }

    /** The same value with 13 for 30, 14 for 40 … 19 for 90 or the other way round. */
    static Optional<Value> teenTy(Value value) {
        return changed(value, SoundAlikes::teenTy);
    }

    /** The same value with its two digits exchanged, where that is a number of two digits again. */
    static Optional<Value> swapped(Value value) {
        return changed(value, SoundAlikes::swapped);
    }

    private static Optional<Integer> teenTy(int number) {
        if (number >= 13 && number <= 19) {
            return Optional.of((number - 10) * 10);
        }
        return number >= 30 && number <= 90 && number % 10 == 0 ? Optional.of(number / 10 + 10) : Optional.empty();
    }

    private static Optional<Integer> swapped(int number) {
        int tens = number / 10;
        int units = number % 10;
        boolean exchangeable = number >= 10 && number <= 99 && units != 0 && units != tens;
        return exchangeable ? Optional.of(units * 10 + tens) : Optional.empty();
    }

    private static Optional<Value> changed(Value value, Function<Integer, Optional<Integer>> change) {
        if (value instanceof Value.Angle angle) {
            return changed(angle.degrees(), change).map(Value.Angle::new);
        }
        if (value instanceof Value.Extension extension) {
            return changed(extension.degrees(), change).map(d -> new Value.Extension(extension.kind(), d));
        }
        if (value instanceof Value.Gap gap) {
            return changed(gap.distance(), change).map(Value.Gap::new);
        }
        return value instanceof Value.Span span
                ? changed(span.distance(), change).map(Value.Span::new)
                : Optional.empty();
    }

    private static Optional<Distance> changed(Distance distance, Function<Integer, Optional<Integer>> change) {
        return changed(distance.amount(), change).map(amount -> new Distance(amount, distance.unit()));
    }

    private static Optional<BigDecimal> changed(BigDecimal number, Function<Integer, Optional<Integer>> change) {
        if (number.scale() > 0) {
            return Optional.empty();
        }
        return change.apply(number.intValueExact()).map(BigDecimal::valueOf);
    }
}
