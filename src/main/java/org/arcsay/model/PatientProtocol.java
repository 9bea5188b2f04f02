package org.arcsay.model;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;

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
    static final String INVOLVED = "involved hand: ";
    static final String NO_PASSIVE = "passive motion not permitted";
    static final String NO_RESISTED = "resisted motion not permitted";

    public PatientProtocol {
        ranges = List.copyOf(ranges);
    }

    /** Everything permitted, involved side unknown. */
    public static PatientProtocol none() {
        return new PatientProtocol(Optional.empty(), true, true, List.of());
    }

    /**
     * A protocol from statements such as "no passive motion" or "IP flexion at most 40".
     *
     * @param text statements, separated by line breaks, semicolons or commas; letter case does not matter
     * @throws IllegalArgumentException naming the statement that is not understood, with what can be written
     */
    public static PatientProtocol parse(String text) {
        return ProtocolStatements.read(text);
    }

    /** Whether it limits nothing and names no hand. */
    public boolean isNone() {
        return equals(none());
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

    /** What it says, one statement each, as {@link #parse} reads it back. */
    public List<String> statements() {
        List<String> statements = new ArrayList<>();
        involvedSide.ifPresent(side -> statements.add(INVOLVED + side.word()));
        if (!passivePermitted) {
            statements.add(NO_PASSIVE);
        }
        if (!resistedPermitted) {
            statements.add(NO_RESISTED);
        }
        ranges.forEach(limit -> statements.add(limit.words()));
        return statements;
    }

    /** All statements in one line; "nothing is limited" where there are none. */
    public String words() {
        return isNone() ? "nothing is limited" : statements().stream().collect(Collectors.joining("; "));
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

        /** Whether the limit is about what was measured there. */
        public boolean covers(Reading reading) {
            return measure.equals(reading.measure()) && (mode.isEmpty() || mode.get() == reading.mode());
        }

        /** Such as "passive IP flexion at most 40 degrees" or "IP extension lacks at least 20 degrees". */
        public String words() {
            return mode.map(only -> only.word() + " ").orElse("") + measure.words() + " " + furthestWords();
        }

        private String furthestWords() {
            if (furthest instanceof Value.Extension extension) {
                String degrees = extension.degrees().toPlainString() + " degrees";
                return switch (extension.kind()) {
                    case DEFICIT -> "lacks at least " + degrees;
                    case NEUTRAL -> "not beyond neutral";
                    case HYPEREXTENSION -> "hyperextends at most " + degrees;
                };
            }
            return "at most " + furthest.words();
        }
    }
}
