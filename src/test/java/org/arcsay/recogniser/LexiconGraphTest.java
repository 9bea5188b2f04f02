package org.arcsay.recogniser;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.io.InputStream;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.BitSet;
import java.util.Deque;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import org.arcsay.grammar.Lexicon;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Compared with a file that OpenFst's own tools wrote from the same words (see the README beside it). */
final class LexiconGraphTest {
    private static final String WORDS =
            "a\tAH | EY\neighty\tEY T IY\nfifty\tF IH F T IY\nfive\tF AY V\nflexion\tF L EH K SH AH N\n";

    private record Arc(int input, int output, float cost, int target) {}

    /** What a file holds, read after the headers, whose lengths are fixed. */
    private record Transducer(List<List<Arc>> arcs, List<Boolean> accepting, List<BitSet> firsts) {
        private static final int INNER = 80;
        private static final int STATES_AT = INNER + 65;

        static Transducer read(byte[] bytes) {
            ByteBuffer in = ByteBuffer.wrap(bytes).order(ByteOrder.LITTLE_ENDIAN);
            int states = (int) in.getLong(STATES_AT - 16);
            int count = (int) in.getLong(STATES_AT - 8);
            List<List<Arc>> arcs = new ArrayList<>();
            List<Boolean> accepting = new ArrayList<>();
            int arcsAt = STATES_AT + 20 * states;
            for (int i = 0; i < states; i++) {
                int at = STATES_AT + 20 * i;
                accepting.add(in.getFloat(at) == 0);
                arcs.add(arcs(in, arcsAt + 16 * in.getInt(at + 4), in.getInt(at + 8)));
            }
            in.position(arcsAt + 16 * count + 17);
            List<BitSet> firsts = new ArrayList<>();
            for (int i = 0; i < states; i++) {
                firsts.add(first(in));
            }
            assertThat(in.remaining()).isZero();
            return new Transducer(arcs, accepting, firsts);
        }

        private static List<Arc> arcs(ByteBuffer in, int from, int count) {
            List<Arc> arcs = new ArrayList<>();
            for (int at = from; at < from + 16 * count; at += 16) {
                arcs.add(new Arc(in.getInt(at), in.getInt(at + 4), in.getFloat(at + 8), in.getInt(at + 12)));
            }
            return arcs;
        }

        private static BitSet first(ByteBuffer in) {
            BitSet set = new BitSet();
            for (long left = in.getLong(); left > 0; left--) {
                int begin = in.getInt();
                set.set(begin, in.getInt());
            }
            assertThat(in.getInt()).isEqualTo(set.cardinality());
            return set;
        }

        Optional<Arc> by(int state, Arc like) {
            List<Arc> alike = arcs.get(state).stream()
                    .filter(arc -> arc.input == like.input && (arc.output == 0) == (like.output == 0))
                    .toList();
            return alike.size() == 1 ? Optional.of(alike.get(0)) : Optional.empty();
        }
    }

    private static Map<String, Integer> phones() throws Exception {
        try (InputStream in =
                LexiconGraphTest.class.getResourceAsStream("/org/arcsay/models/en-thumb/graph/phones.txt")) {
            return new String(in.readAllBytes())
                    .lines()
                    .map(line -> line.split(" "))
                    .collect(Collectors.toMap(fields -> fields[0], fields -> Integer.parseInt(fields[1])));
        }
    }

    private static byte[] writtenByOpenFst() throws IOException {
        try (InputStream in = LexiconGraphTest.class.getResourceAsStream("/openfst/lexicon.fst")) {
            return in.readAllBytes();
        }
    }

    /** Both number states and words in their own order; up to that order they must be the same, look-ahead included. */
    @Test
    void isWhatOpenFstMakesOfTheSameWords() throws Exception {
        Transducer ours = Transducer.read(
                LexiconGraph.compile(Lexicon.parse(WORDS), phones()).fst());
        Transducer theirs = Transducer.read(writtenByOpenFst());
        assertThat(ours.arcs()).hasSameSizeAs(theirs.arcs());
        Map<Integer, Integer> states = new HashMap<>(Map.of(0, 0));
        Map<Integer, Integer> labels = new HashMap<>();
        Deque<Integer> open = new ArrayDeque<>(List.of(0));
        while (!open.isEmpty()) {
            int state = open.pop();
            assertThat(ours.accepting().get(state)).isEqualTo(theirs.accepting().get(states.get(state)));
            assertThat(ours.arcs().get(state)).hasSameSizeAs(theirs.arcs().get(states.get(state)));
            for (Arc arc : ours.arcs().get(state)) {
                Arc other = theirs.by(states.get(state), arc).orElseThrow();
                assertThat(arc.cost()).isEqualTo(other.cost());
                assertThat(labels.computeIfAbsent(arc.output(), label -> other.output()))
                        .isEqualTo(other.output());
                if (states.putIfAbsent(arc.target(), other.target()) == null) {
                    open.push(arc.target());
                }
                assertThat(states.get(arc.target())).isEqualTo(other.target());
            }
        }
        int end = labels.size();
        labels.put(end, end);
        states.forEach((mine, their) -> {
            BitSet mapped = new BitSet();
            ours.firsts().get(mine).stream().forEach(label -> mapped.set(labels.get(label)));
            assertThat(mapped).isEqualTo(theirs.firsts().get(their));
        });
        assertThat(states).hasSameSizeAs(theirs.arcs());
    }

    @Test
    void aPhoneThatTheModelLacksIsNamed() throws Exception {
        Map<String, Integer> few = new HashMap<>(phones());
        few.remove("ZH_B");
        assertThatThrownBy(() -> LexiconGraph.compile(Lexicon.parse("genre\tZH AA N R AH"), few))
                .isInstanceOf(ModelException.class)
                .hasMessageContaining("ZH_B");
    }

    /** A model's graph must be that of the lexicon beside the grammar, or the program hears other words than it says. */
    @Test
    void theBuiltInModelHasTheLexiconOfTheGrammar(@TempDir java.nio.file.Path cache) throws Exception {
        ModelFolder bundled = new ModelCache(cache).bundled();
        assertThat(bundled.lexicon()).isEqualTo(Lexicon.standard());
        assertThat(bundled.wordIds())
                .containsAllEntriesOf(LexiconGraph.compile(Lexicon.standard(), bundled.phones())
                        .wordIds());
    }
}
