package org.arcsay.recogniser;

import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/**
 * Collects a weighted acceptor and writes it in OpenFst's binary format for constant transducers, version 2 (unaligned);
 * for one thread. Layout as in {@code fst/fst.h} and {@code fst/const-fst.h} of OpenFst 1.8.
 */
final class FstWriter {
    private static final int MAGIC = 2_125_659_606;
    private static final int VERSION = 2;
    private static final int NO_FLAGS = 0;
    private static final int STATE_BYTES = 20;
    private static final int ARC_BYTES = 16;
    private static final int HEADER_BYTES = 65;

    /** Label of an arc that takes no word. */
    private static final int NO_WORD = 0;

    /** Expanded, acceptor, sorted by input and by output label, weighted; the rest is left for the reader to find out. */
    private static final long PROPERTIES = 0x1L | 0x1_0000L | 0x1000_0000L | 0x4000_0000L | 0x1_0000_0000L;

    private record Arc(int label, float cost, int target) {}

    private final List<List<Arc>> states = new ArrayList<>();
    private final boolean[] accepting;
    private final int start;

    FstWriter(int stateCount, int start) {
        this.start = start;
        accepting = new boolean[stateCount];
        for (int i = 0; i < stateCount; i++) {
            states.add(new ArrayList<>());
        }
    }

    void accept(int state) {
        accepting[state] = true;
    }

    void arc(int from, int label, double cost, int to) {
        states.get(from).add(new Arc(label, (float) cost, to));
    }

    void silentArc(int from, double cost, int to) {
        arc(from, NO_WORD, cost, to);
    }

    byte[] bytes() {
        int arcs = states.stream().mapToInt(List::size).sum();
        ByteBuffer out = ByteBuffer.allocate(HEADER_BYTES + states.size() * STATE_BYTES + arcs * ARC_BYTES)
                .order(ByteOrder.LITTLE_ENDIAN);
        header(out, arcs);
        states(out);
        for (List<Arc> state : states) {
            state.sort(Comparator.comparingInt(Arc::label).thenComparingInt(Arc::target));
            state.forEach(arc ->
                    out.putInt(arc.label).putInt(arc.label).putFloat(arc.cost).putInt(arc.target));
        }
        return out.array();
    }

    private void header(ByteBuffer out, int arcs) {
        out.putInt(MAGIC);
        text(out, "const");
        text(out, "standard");
        out.putInt(VERSION).putInt(NO_FLAGS).putLong(PROPERTIES);
        out.putLong(start).putLong(states.size()).putLong(arcs);
    }

    private void states(ByteBuffer out) {
        int position = 0;
        for (int i = 0; i < states.size(); i++) {
            int arcs = states.get(i).size();
            out.putFloat(accepting[i] ? 0 : Float.POSITIVE_INFINITY)
                    .putInt(position)
                    .putInt(arcs);
            out.putInt(0).putInt(0);
            position += arcs;
        }
    }

    private static void text(ByteBuffer out, String text) {
        byte[] bytes = text.getBytes(StandardCharsets.US_ASCII);
        out.putInt(bytes.length).put(bytes);
    }
}
