package org.arcsay.validate;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.arcsay.model.Dimension;
import org.arcsay.model.Measure;
import org.arcsay.model.Mode;
import org.arcsay.model.Reading;
import org.arcsay.model.Side;
import org.arcsay.model.Value;

/**
 * What the treatment protocol of one patient allows. Breaking it leads to a question, never to a refusal.
 *
 * @param involvedSide the hand under treatment, if known
 * @param passivePermitted whether passive motion may be measured
 * @param resistedPermitted whether motion against resistance may be tested
 * @param ranges how far a joint may be moved
 */
public record PatientProtocol(
        Optional<Side> involvedSide, boolean passivePermitted, boolean resistedPermitted, List<RangeLimit> ranges) {
    public PatientProtocol {
        ranges = List.copyOf(ranges);
    }

    /** Everything permitted, involved side unknown. */
    public static PatientProtocol none() {
        return new PatientProtocol(Optional.empty(), true, true, List.of());
    }

    public PatientProtocol involving(Side side) {
        return new PatientProtocol(Optional.of(side), passivePermitted, resistedPermitted, ranges);
    }

    public PatientProtocol withoutPassive() {
        return new PatientProtocol(involvedSide, false, resistedPermitted, ranges);
    }

    public PatientProtocol withoutResisted() {
        return new PatientProtocol(involvedSide, passivePermitted, false, ranges);
    }

    public PatientProtocol limiting(RangeLimit limit) {
        List<RangeLimit> more = new ArrayList<>(ranges);
        more.add(limit);
        return new PatientProtocol(involvedSide, passivePermitted, resistedPermitted, more);
    }

    /** Whether limits of motion hold for this hand: for the involved one, or for both while it is unknown. */
    public boolean concerns(Side side) {
        return involvedSide.isEmpty() || involvedSide.get() == side;
    }

    /**
     * The furthest point to which a joint may be moved.
     *
     * @param measure an angle or an extension
     * @param mode active, passive, or both when empty
     * @param furthest an angle, or for extension the straightest position allowed, such as "lacks 20 degrees"
     */
    public record RangeLimit(Measure measure, Optional<Mode> mode, Value furthest) {
        public RangeLimit {
            boolean angular = measure.dimension() == Dimension.ANGLE || measure.dimension() == Dimension.EXTENSION;
            boolean numeric = furthest instanceof Value.Angle || furthest instanceof Value.Extension;
            if (!angular || !numeric || !Reading.fits(measure.dimension(), furthest)) {
                throw new IllegalArgumentException(
                        "a range limit is an angle or an extension, not " + measure.words() + ": " + furthest.words());
            }
        }

        boolean covers(Reading reading) {
            return measure.equals(reading.measure()) && (mode.isEmpty() || mode.get() == reading.mode());
        }
    }
}
