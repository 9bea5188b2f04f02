package org.arcsay.recogniser;

import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.BitSet;
import java.util.Comparator;
import java.util.List;

/**
 * Collects a weighted transducer and writes it in OpenFst's binary format; for one thread. Layouts as in {@code fst/fst.h},
 * {@code fst/const-fst.h}, {@code fst/add-on.h} and {@code fst/label-reachable.h} of OpenFst 1.8.
 */
final class FstWriter {
    /** Label of an arc that takes or gives nothing. */
    static final int NOTHING = 0;

    private static final int MAGIC = 2_125_659_606;
    private static final int ADD_ON_MAGIC = 446_681_434;
    private static final int CONSTANT_VERSION = 2;
    private static final int ADD_ON_VERSION = 1;
    private static final int NO_FLAGS = 0;
    private static final int STATE_BYTES = 20;
    private static final int ARC_BYTES = 16;
    private static final int CONSTANT_HEADER_BYTES = 65;
    private static final int ADD_ON_HEADER_BYTES = 80;
    private static final int INTERVAL_BYTES = 8;

    private static final long EXPANDED = 0x1L;
    private static final long ACCEPTOR = 0x1_0000L;
    private static final long NOT_ACCEPTOR = 0x2_0000L;
    private static final long SORTED_BY_INPUT = 0x1000_0000L;
    private static final long SORTED_BY_OUTPUT = 0x4000_0000L;
    private static final long WEIGHTED = 0x1_0000_0000L;

    private static final Comparator<Arc> BY_INPUT =
            Comparator.comparingInt(Arc::input).thenComparingInt(Arc::output).thenComparingInt(Arc::target);
    private static final Comparator<Arc> BY_OUTPUT =
            Comparator.comparingInt(Arc::output).thenComparingInt(Arc::input).thenComparingInt(Arc::target);

    private record Arc(int input, int output, float cost, int target) {}

    private final List<List<Arc>> states = new ArrayList<>();
    private final BitSet accepting = new BitSet();
    private final int start;

    FstWriter(int stateCount, int start) {
        this.start = start;
        for (int i = 0; i < stateCount; i++) {
            addState();
        }
    }

    /** A new state's number. */
    int addState() {
        states.add(new ArrayList<>());
        return states.size() - 1;
    }

    void accept(int state) {
        accepting.set(state);
    }

    void arc(int from, int label, double cost, int to) {
        arc(from, label, label, cost, to);
    }

    void arc(int from, int input, int output, double cost, int to) {
        states.get(from).add(new Arc(input, output, (float) cost, to));
    }

    void silentArc(int from, double cost, int to) {
        arc(from, NOTHING, cost, to);
    }

    /** A constant transducer whose arcs give what they take, sorted by label. */
    byte[] acceptor() {
        return constant(BY_INPUT, EXPANDED | ACCEPTOR | SORTED_BY_INPUT | SORTED_BY_OUTPUT | WEIGHTED);
    }

    /**
     * A constant transducer that knows for each state which output labels can come first from there, so that a grammar
     * composed with it is entered only where it can go on (type {@code olabel_lookahead}).
     */
    byte[] lookAhead() {
        byte[] inner = constant(BY_OUTPUT, EXPANDED | NOT_ACCEPTOR | SORTED_BY_OUTPUT | WEIGHTED);
        int end = 1
                + states.stream()
                        .flatMap(List::stream)
                        .mapToInt(Arc::output)
                        .max()
                        .orElse(0);
        List<BitSet> firsts = firstOutputs(end);
        int intervals = firsts.stream().mapToInt(FstWriter::intervals).sum();
        ByteBuffer out = ByteBuffer.allocate(
                        ADD_ON_HEADER_BYTES + inner.length + 17 + 12 * states.size() + INTERVAL_BYTES * intervals)
                .order(ByteOrder.LITTLE_ENDIAN);
        header(
                out,
                "olabel_lookahead",
                ADD_ON_VERSION,
                EXPANDED | NOT_ACCEPTOR | SORTED_BY_OUTPUT | WEIGHTED,
                -1,
                0,
                0);
        out.putInt(ADD_ON_MAGIC).put(inner);
        flags(out, true, false, true, false, false);
        out.putInt(end).putLong(states.size());
        firsts.forEach(first -> intervals(out, first));
        return out.array();
    }

    /** Add-on present; none for inputs; one for outputs; it is not about inputs; no table of old labels follows. */
    private static void flags(ByteBuffer out, boolean... flags) {
        for (boolean flag : flags) {
            out.put((byte) (flag ? 1 : 0));
        }
    }

    private static void intervals(ByteBuffer out, BitSet set) {
        out.putLong(intervals(set));
        for (int begin = set.nextSetBit(0); begin >= 0; ) {
            int end = set.nextClearBit(begin);
            out.putInt(begin).putInt(end);
            begin = set.nextSetBit(end);
        }
        out.putInt(set.cardinality());
    }

    private static int intervals(BitSet set) {
        int count = 0;
        for (int begin = set.nextSetBit(0); begin >= 0; begin = set.nextSetBit(set.nextClearBit(begin))) {
            count++;
        }
        return count;
    }

    /** The labels that can be given first from each state; {@code end} where it can end without any. */
    private List<BitSet> firstOutputs(int end) {
        List<BitSet> firsts = new ArrayList<>();
        for (int i = 0; i < states.size(); i++) {
            BitSet own = new BitSet();
            own.set(end, accepting.get(i) ? end + 1 : end);
            states.get(i).stream()
                    .mapToInt(Arc::output)
                    .filter(label -> label != NOTHING)
                    .forEach(own::set);
            firsts.add(own);
        }
        boolean changed = true;
        while (changed) {
            changed = false;
            for (int i = states.size() - 1; i >= 0; i--) {
                changed |= addFromSilentArcs(firsts, i);
            }
        }
        return firsts;
    }

    private boolean addFromSilentArcs(List<BitSet> firsts, int state) {
        int before = firsts.get(state).cardinality();
        for (Arc arc : states.get(state)) {
            if (arc.output == NOTHING) {
                firsts.get(state).or(firsts.get(arc.target));
            }
        }
        return firsts.get(state).cardinality() > before;
    }

    private byte[] constant(Comparator<Arc> order, long properties) {
        int arcs = states.stream().mapToInt(List::size).sum();
        ByteBuffer out = ByteBuffer.allocate(CONSTANT_HEADER_BYTES + states.size() * STATE_BYTES + arcs * ARC_BYTES)
                .order(ByteOrder.LITTLE_ENDIAN);
        header(out, "const", CONSTANT_VERSION, properties, start, states.size(), arcs);
        states(out);
        for (List<Arc> state : states) {
            state.sort(order);
            state.forEach(arc ->
                    out.putInt(arc.input).putInt(arc.output).putFloat(arc.cost).putInt(arc.target));
        }
        return out.array();
    }

    private static void header(
            ByteBuffer out, String type, int version, long properties, long start, long states, long arcs) {
        out.putInt(MAGIC);
        text(out, type);
        text(out, "standard");
        out.putInt(version).putInt(NO_FLAGS).putLong(properties);
        out.putLong(start).putLong(states).putLong(arcs);
    }

    private void states(ByteBuffer out) {
        int position = 0;
        for (int i = 0; i < states.size(); i++) {
            List<Arc> arcs = states.get(i);
            out.putFloat(accepting.get(i) ? 0 : Float.POSITIVE_INFINITY)
                    .putInt(position)
                    .putInt(arcs.size());
            out.putInt((int) arcs.stream().filter(arc -> arc.input == NOTHING).count());
            out.putInt((int) arcs.stream().filter(arc -> arc.output == NOTHING).count());
            position += arcs.size();
        }
    }

    private static void text(ByteBuffer out, String text) {
        byte[] bytes = text.getBytes(StandardCharsets.US_ASCII);
        out.putInt(bytes.length).put(bytes);
    }
}
